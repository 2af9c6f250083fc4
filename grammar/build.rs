//! Turns the data files into static tables at build time, so that nothing is parsed at start.

#[path = "build/places.rs"]
mod places;
#[path = "build/strength.rs"]
mod strength;

use serde::Deserialize;
use std::fmt::Write as _;
use std::path::Path;
use std::{env, fs};

#[derive(Deserialize)]
struct Sizes {
    dressed: Vec<Dressed>,
}

#[derive(Deserialize)]
struct Dressed {
    nominal: u16,
    sixteenths: i64,
    status: String,
}

#[derive(Deserialize)]
struct Limits {
    limit: Vec<Limit>,
}

#[derive(Deserialize)]
struct Limit {
    id: String,
    value: i64,
    unit: String,
    #[serde(default)]
    sense: String,
    says: String,
    source: String,
    status: String,
    note: String,
}

#[derive(Deserialize)]
struct Saws {
    saw: Vec<Saw>,
}

#[derive(Deserialize)]
struct Saw {
    blade: i64,
    depth: i64,
}

#[derive(Deserialize)]
struct Editions {
    edition: Vec<Edition>,
}

#[derive(Deserialize)]
struct Edition {
    number: u32,
    taken: Vec<String>,
}

#[derive(Deserialize)]
struct Woods {
    species: Vec<Species>,
}

#[derive(Deserialize)]
struct Species {
    id: String,
    name: String,
    tangential: i64,
    saturation: i64,
    source: String,
    status: String,
}

#[derive(Deserialize)]
struct Topics {
    opens: Vec<String>,
    light: Vec<String>,
    list: Vec<String>,
    found: Vec<String>,
    topic: Vec<Topic>,
}

#[derive(Deserialize)]
struct Topic {
    limit: String,
    #[serde(default)]
    cues: Vec<String>,
    #[serde(default)]
    of: Vec<String>,
    #[serde(default)]
    when: Vec<String>,
    #[serde(default)]
    yes: Vec<String>,
    #[serde(default)]
    no: Vec<String>,
}

#[derive(Deserialize)]
struct Lexicon {
    #[serde(default)]
    amiss: Vec<String>,
    #[serde(default)]
    without: Vec<String>,
    #[serde(default)]
    needs: Vec<String>,
    term: Vec<Term>,
}

#[derive(Deserialize)]
struct Term {
    sense: String,
    words: Vec<String>,
}

/// Limits, a file for each part of the work.
const LIMIT_FILES: [&str; 3] = ["src/limits/limits.toml", "src/limits/stairs.toml", "src/limits/asked.toml"];

fn main() {
    let out = env::var("OUT_DIR").expect("cargo names the output folder");
    write(&out, "sizes.rs", &sizes(&read("src/measure/sizes.toml")));
    write(&out, "saws.rs", &saws(&read("src/notch/saws.toml")));
    let rows = LIMIT_FILES.iter().flat_map(|path| read::<Limits>(path).limit).collect();
    write(&out, "limits.rs", &limits(&Limits { limit: rows }));
    write(&out, "places.rs", &places::places(&read("src/limits/places.toml")));
    write(&out, "editions.rs", &editions(&read("src/store/defaults.toml")));
    write(&out, "species.rs", &species(&read("src/infill/species.toml")));
    write(&out, "topics.rs", &topics(&read("grammar/topics.toml")));
    let words = read("grammar/words.toml");
    write(&out, "words.rs", &lexicon(&words, "TERMS", "Sense"));
    write(&out, "amiss.rs", &amiss(&words));
    write(&out, "numbers.rs", &lexicon(&read("grammar/numbers.toml"), "NUMBERS", "Role"));
    write(&out, "flight_words.rs", &lexicon(&read("grammar/flight.toml"), "FLIGHT_WORDS", "FlightWord"));
    write(&out, "design_values.rs", &strength::values(&read("src/strength/values.toml")));
    write(&out, "strength_factors.rs", &strength::factors(&read("src/strength/factors.toml")));
    println!("cargo::rerun-if-changed=grammar/build.rs");
    // The tables of words are pointers, twenty thousand of them: placed once by the linker, not anew at every start.
    if std::env::var("TARGET").is_ok_and(|t| t.ends_with("linux-gnu")) {
        println!("cargo::rustc-link-arg-bins=-no-pie");
    }
    println!("cargo::rerun-if-changed=grammar/build/strength.rs");
    println!("cargo::rerun-if-changed=grammar/build/places.rs");
}

/// Reads one data file; a file that does not parse stops the build with its name.
fn read<T: for<'a> Deserialize<'a>>(path: &str) -> T {
    println!("cargo::rerun-if-changed={path}");
    let text = fs::read_to_string(path).unwrap_or_else(|e| panic!("{path}: {e}"));
    toml::from_str(&text).unwrap_or_else(|e| panic!("{path}: {e}"))
}

fn write(out: &str, name: &str, text: &str) {
    fs::write(Path::new(out).join(name), text).unwrap_or_else(|e| panic!("{name}: {e}"));
}

fn trust(status: &str) -> &'static str {
    match status {
        "checked" => "Checked",
        "memory" => "Memory",
        "practice" => "Practice",
        other => panic!("unknown status {other:?}: use checked, memory or practice"),
    }
}

/// A source that says itself how far it is trusted: wherever it is printed, its trust is.
fn cited(source: &str, status: &str) -> String {
    let memory = if trust(status) == "Memory" { " (from memory, not checked)" } else { "" };
    format!("{source}{memory}")
}

fn sizes(data: &Sizes) -> String {
    let mut rows = String::new();
    for d in &data.dressed {
        let memory = trust(&d.status) == "Memory";
        let _ = writeln!(rows, "    ({}, {}, {memory}),", d.nominal, d.sixteenths);
    }
    format!(
        "/// Nominal quarter inches, dressed sixteenths, from memory.\nconst DRESSED: &[(u16, i64, bool)] = &[\n{rows}];\n"
    )
}

fn saws(data: &Saws) -> String {
    let rows: String = data.saw.iter().map(|s| format!("    ({}, {}),\n", s.blade, s.depth)).collect();
    format!(
        "/// Blade and depth of cut, in sixteenths, the smallest first.\nconst SAWS: &[(i64, i64)] = &[\n{rows}];\n"
    )
}

fn limits(data: &Limits) -> String {
    let mut text = String::new();
    for l in &data.limit {
        let cited = |source: &str| cited(source, &l.status);
        let _ = writeln!(
            text,
            "/// {says}.\npub static {name}: Limit = Limit {{ id: {id:?}, value: {value}, unit: {unit:?}, sense: Sense::{sense}, says: {says:?}, \
             source: {source:?}, by_edition: {by_edition:?}, trust: Trust::{trust}, note: {note:?} }};",
            name = l.id.replace('-', "_").to_uppercase(),
            says = l.says,
            id = l.id,
            value = l.value,
            unit = l.unit,
            sense = sense(&l.sense),
            source = cited(&l.source),
            by_edition = places::by_edition(&l.source).map(|s| cited(&s)),
            trust = trust(&l.status),
            note = l.note,
        );
    }
    let names: Vec<_> = data.limit.iter().map(|l| format!("&{}", l.id.replace('-', "_").to_uppercase())).collect();
    let _ = writeln!(text, "/// Every limit.\npub static LIMITS: &[&Limit] = &[{}];", names.join(", "));
    text
}

/// How what is held to a limit is held to it; empty for one that no figure is held to.
fn sense(named: &str) -> &'static str {
    match named {
        "" => "None",
        "most" => "Most",
        "least" => "Least",
        "under" => "Under",
        "over" => "Over",
        "from" => "From",
        other => panic!("no sense of a limit: {other}"),
    }
}

fn editions(data: &Editions) -> String {
    let rows: String = data.edition.iter().map(|e| format!("    ({}, &{:?}),\n", e.number, e.taken)).collect();
    format!("/// Every edition of the defaults, the oldest first.\npub static EDITIONS: &[Edition] = &[\n{rows}];\n")
}

/// A cue: a set of words, each with the others that may stand for it.
fn cue(text: &str) -> String {
    text.split_whitespace().map(|w| format!("&{:?}, ", w.split('|').collect::<Vec<_>>())).collect()
}

fn cues(of: &[String]) -> String {
    of.iter().map(|c| format!("&[{}], ", cue(c))).collect()
}

/// A topic's limit and each of its cues; what opens a question; what is light in one.
fn topics(data: &Topics) -> String {
    let mut rows = String::new();
    for t in &data.topic {
        let limit = t.limit.replace('-', "_").to_uppercase();
        for text in &t.cues {
            let _ = writeln!(rows, "    (&crate::limits::{limit}, &[{}]),", cue(text));
        }
    }
    let mut talked = String::new();
    for t in data.topic.iter().filter(|t| !t.of.is_empty()) {
        let limit = t.limit.replace('-', "_").to_uppercase();
        let sets = [&t.when, &t.yes, &t.no].map(|of| format!("&[{}]", cues(of)));
        let [when, yes, no] = sets;
        let _ = writeln!(
            talked,
            "    Talked {{ limit: &crate::limits::{limit}, of: &{:?}, when: {when}, yes: {yes}, no: {no} }},",
            t.of
        );
    }
    format!(
        "/// Every limit that answers a topic of loose talk.\nstatic TALKED: &[Talked] = &[\n{talked}];\n\
         /// Every cue and the limit it points to.\nstatic CUES: &[Cue] = &[\n{rows}];\n\
         /// Words a question begins with.\nstatic OPENS: &[&str] = &{:?};\n\
         /// Words that say nothing of their own in a question.\nstatic LIGHT: &[&str] = &{:?};\n\
         /// Cues of the list of rules.\nstatic LIST: &[&[&[&str]]] = &[{}];\n\
         /// Cues of the rules that found something.\nstatic FOUND: &[&[&[&str]]] = &[{}];\n",
        data.opens,
        data.light,
        cues(&data.list),
        cues(&data.found)
    )
}

fn species(data: &Woods) -> String {
    let mut text = String::from("/// Every species.\npub static SPECIES: &[Species] = &[\n");
    for s in &data.species {
        let _ = writeln!(
            text,
            "    Species {{ id: {:?}, name: {:?}, tangential: {}, saturation: {}, source: {:?}, trust: Trust::{} }},",
            s.id,
            s.name,
            s.tangential,
            s.saturation,
            s.source,
            trust(&s.status),
        );
    }
    text.push_str("];\n");
    text
}

/// One row for each spelling, sorted by first word then longest first, for the
/// reader's longest-match search.
fn lexicon(data: &Lexicon, table: &str, kind: &str) -> String {
    let mut rows: Vec<(Vec<String>, String)> = Vec::new();
    for term in &data.term {
        for spelling in &term.words {
            let words = spelling.split_whitespace().map(str::to_owned).collect();
            rows.push((words, term.sense.clone()));
        }
    }
    rows.sort_by(|a, b| a.0[0].cmp(&b.0[0]).then(b.0.len().cmp(&a.0.len())).then(a.cmp(b)));
    rows.dedup();
    let starts: Vec<String> = (0..=256).map(|byte| starting_below(&rows, byte).to_string()).collect();
    let mut text =
        format!("/// Every spelling: its words and its sense.\npub static {table}: &[(&[&str], {kind})] = &[\n");
    for (words, sense) in rows {
        let _ = writeln!(text, "    (&{words:?}, {kind}::{sense}),");
    }
    let _ = writeln!(
        text,
        "];\n/// Where the rows whose first word starts with each byte begin; one more, for where the last end.\n\
         static {table}_FROM: [usize; 257] = [{}];",
        starts.join(", ")
    );
    text
}

/// Words that ask whether something is amiss, may be left off, is needed.
fn amiss(data: &Lexicon) -> String {
    let table = |says: &str, name: &str, of: &[String]| {
        let rows: Vec<Vec<&str>> = of.iter().map(|spelling| spelling.split_whitespace().collect()).collect();
        let rows: String = rows.iter().map(|words| format!("    &{words:?},\n")).collect();
        format!("/// {says}\nstatic {name}: &[&[&str]] = &[\n{rows}];\n")
    };
    table("Words that ask whether something is amiss.", "AMISS", &data.amiss)
        + &table("Words that ask to do without what a limit may ask for.", "LEFT_OFF", &data.without)
        + &table("Words that ask whether it is needed.", "NEEDS", &data.needs)
}

/// How many rows start with a byte below this one.
fn starting_below(rows: &[(Vec<String>, String)], byte: usize) -> usize {
    rows.iter().filter(|(words, _)| usize::from(words[0].as_bytes()[0]) < byte).count()
}
