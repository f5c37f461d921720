//! Tells the linker where `libvosk.so` lies and writes where the finished program looks for it.
//!
//! `./setup.sh` unpacks the library to `lib/`; `VOSK_LIB_DIR` names another folder. The wheel's library has no
//! SONAME, so the program finds it by run path: first beside an installed program, then in the folder it was built with.

use std::path::PathBuf;

fn main() {
    println!("cargo:rerun-if-env-changed=VOSK_LIB_DIR");
    println!("cargo:rerun-if-changed=build.rs");
    println!("cargo:rerun-if-changed=lib/libvosk.so");
    let own = PathBuf::from(std::env::var("CARGO_MANIFEST_DIR").expect("cargo sets it")).join("lib");
    let dir = std::env::var_os("VOSK_LIB_DIR").map_or(own, PathBuf::from);
    if !dir.join("libvosk.so").exists() {
        println!(
            "cargo:warning=libvosk.so is not in {}: run ./setup.sh first, or set VOSK_LIB_DIR to the folder that holds it",
            dir.display()
        );
    }
    println!("cargo:rustc-link-search=native={}", dir.display());
    // An installed program, a built one in target/PROFILE, a test in target/PROFILE/deps: so a checkout may be moved.
    for beside in ["../lib", "../../lib", "../../../lib"] {
        println!("cargo:rustc-link-arg=-Wl,-rpath,$ORIGIN/{beside}");
    }
    println!("cargo:rustc-link-arg=-Wl,-rpath,{}", dir.display());
}
