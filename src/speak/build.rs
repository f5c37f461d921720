//! The catalogue is embedded: a file that is added or taken away must lead to a new build, too.

fn main() {
    println!("cargo:rerun-if-changed=build.rs");
    println!("cargo:rerun-if-changed=words");
}
