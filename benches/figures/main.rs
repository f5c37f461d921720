//! `figures show|compare|keep|page`: see `benches/README.md`.

use figures::compare::compare;
use figures::declared::File;
use figures::keep::keep;
use figures::page::page;
use figures::taken::Run;
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

const USAGE: &str = "figures show RUN                          the run as a table
figures compare RUN [--known] [START…]    what got worse; --known lets limits pass that were missed before; START: only ids that begin so
figures keep RUN                          puts the run on record in benches/figures.toml and on docs/performance.md
figures page [--check]                    writes the tables of docs/performance.md anew, or only says whether they are up to date";

fn at(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path)
}

fn read(path: &Path) -> Result<String, Box<dyn Error>> {
    fs::read_to_string(path).map_err(|why| format!("{}: {why}", path.display()).into())
}

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match run(&arguments.iter().map(String::as_str).collect::<Vec<_>>()) {
        Ok(code) => code,
        Err(why) => {
            eprintln!("figures: {why}");
            ExitCode::from(2)
        }
    }
}

fn run(arguments: &[&str]) -> Result<ExitCode, Box<dyn Error>> {
    // Read anew, not as it was at the build.
    let path = at("benches/figures.toml");
    let text = read(&path)?;
    let file = File::read(&text).map_err(|why| format!("{}: {why}", path.display()))?;
    match arguments {
        ["show", from] => show(&file, &Run::read(&read(Path::new(from))?)?),
        ["compare", from, rest @ ..] => {
            let known = rest.contains(&"--known");
            let only: Vec<String> = rest.iter().filter(|word| **word != "--known").map(|word| (*word).to_owned()).collect();
            let run = Run::read(&read(Path::new(from))?)?;
            let compared = compare(&file, &run, &only);
            if compared.figures.is_empty() {
                return Err(format!("no figure's id begins with {}", only.join(" or ")).into());
            }
            print!("{}", compared.text());
            return Ok(ExitCode::from(u8::from(compared.fails(known))));
        }
        ["keep", from] => {
            let kept = keep(&text, &file, &Run::read(&read(Path::new(from))?)?)?;
            fs::write(&path, &kept)?;
            write_page(&File::read(&kept)?)?;
        }
        ["page"] => write_page(&file)?,
        ["page", "--check"] => {
            let old = read(&at("docs/performance.md"))?;
            if page(&old, &file)? != old {
                return Err("docs/performance.md does not agree with benches/figures.toml; run `cargo run -p figures -- page`".into());
            }
        }
        _ => return Err(USAGE.into()),
    }
    Ok(ExitCode::SUCCESS)
}

/// In the order of the file; what it does not know comes last.
fn show(file: &File, run: &Run) {
    println!("{:<32}  {:<90}  {:<28}  {:<24}", "id", "figure", "value", "limit");
    let known = file.figures().filter(|figure| run.values.contains_key(&figure.id)).map(|figure| (figure.id.as_str(), Some(figure)));
    let unknown = run.values.keys().filter(|id| file.figure(id).is_none()).map(|id| (id.as_str(), None));
    for (id, figure) in known.chain(unknown) {
        let Some(taken) = run.values.get(id) else { continue };
        let line = figures::line(figure, taken.value, taken.sample);
        let [what, value, limit, kept] = line.splitn(4, '|').map(str::trim).collect::<Vec<_>>()[..] else { continue };
        println!("{id:<32}  {what:<90}  {value:<28}  {limit:<24}  {kept}");
    }
}

fn write_page(file: &File) -> Result<(), Box<dyn Error>> {
    let path = at("docs/performance.md");
    Ok(fs::write(&path, page(&read(&path)?, file)?)?)
}
