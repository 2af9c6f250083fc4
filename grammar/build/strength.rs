//! Design values, factors and beam cases as static tables.

use super::trust;
use serde::Deserialize;
use std::fmt::Write as _;

#[derive(Deserialize)]
pub struct Values {
    value: Vec<DesignValue>,
}

#[derive(Deserialize)]
struct DesignValue {
    species: String,
    grade: String,
    class: String,
    fb: i64,
    fv: i64,
    fc_perp: i64,
    e: i64,
    source: String,
    status: String,
    note: String,
}

#[derive(Deserialize)]
pub struct Factors {
    factor: Vec<Factor>,
    duration: Vec<Duration>,
    beam: Vec<Beam>,
}

#[derive(Deserialize)]
struct Factor {
    kind: String,
    class: String,
    thick: (u16, u16),
    wide: (u16, u16),
    fb: String,
    fv: String,
    fc_perp: String,
    e: String,
    says: String,
    source: String,
    status: String,
    note: String,
}

#[derive(Deserialize)]
struct Duration {
    duration: String,
    factor: String,
    treated: bool,
    says: String,
    source: String,
    status: String,
}

#[derive(Deserialize)]
struct Beam {
    case: String,
    bend: String,
    moment: String,
    says: String,
    source: String,
    status: String,
}

/// A decimal or a fraction in lowest terms, as the call that makes it.
fn ratio(text: &str) -> String {
    let (num, den) = match (text.split_once('/'), text.split_once('.')) {
        (Some((n, d)), _) => (n.to_owned(), d.parse::<i64>().ok()),
        (None, Some((w, p))) => (format!("{w}{p}"), 10_i64.checked_pow(p.len() as u32)),
        (None, None) => (text.to_owned(), Some(1)),
    };
    let (Ok(n), Some(d)) = (num.parse::<i64>(), den) else { panic!("{text:?} is no number") };
    let mut parts = (n, d);
    while parts.1 != 0 {
        parts = (parts.1, parts.0 % parts.1);
    }
    format!("Ratio::new_raw({}, {})", n / parts.0, d / parts.0)
}

/// The class a row is for, as a variant's name.
fn class(name: &str) -> &'static str {
    match name {
        "dimension" => "Dimension",
        "southern-4" => "SouthernFour",
        "southern-6" => "SouthernSix",
        "timber" => "Timber",
        other => panic!("unknown class {other:?}"),
    }
}

fn sized(name: &str) -> &'static str {
    match name {
        "SouthernFour" => "2 to 4 in. thick, 2 to 4 in. wide",
        "SouthernSix" => "2 to 4 in. thick, 5 to 6 in. wide",
        "Dimension" => "2 to 4 in. thick",
        _ => "5x5 and larger",
    }
}

fn kind(name: &str) -> &'static str {
    match name {
        "size" => "Size",
        "flat" => "Flat",
        "wet" => "Wet",
        "incised" => "Incised",
        other => panic!("unknown kind {other:?}"),
    }
}

/// The classes a factor's row covers.
fn classes(name: &str) -> &'static str {
    match name {
        "dimension" => "&[Class::Dimension]",
        "lumber" => "&[Class::Dimension, Class::SouthernFour, Class::SouthernSix]",
        "timber" => "&[Class::Timber]",
        "any" => "&[Class::Dimension, Class::SouthernFour, Class::SouthernSix, Class::Timber]",
        other => panic!("unknown class {other:?}"),
    }
}

/// A source, saying so where the figure is from memory.
fn cited(source: &str, status: &str, note: &str) -> String {
    let memory = if trust(status) == "Memory" { " (from memory)" } else { "" };
    let note = if note.is_empty() { String::new() } else { format!(" ({note})") };
    format!("{source}{memory}{note}")
}

pub fn values(data: &Values) -> String {
    let mut rows = String::new();
    for v in &data.value {
        let class = class(&v.class);
        let _ = writeln!(
            rows,
            "    DesignValue {{ species: Species::{}, grade: Grade::{}, class: Class::{class}, fb: {}, fv: {}, fc_perp: \
             {}, e: {}, sized: {:?}, source: {:?} }},",
            v.species,
            v.grade,
            v.fb,
            v.fv,
            v.fc_perp,
            v.e,
            sized(class),
            cited(&v.source, &v.status, &v.note),
        );
    }
    format!("/// Every row of design values.\npub static VALUES: &[DesignValue] = &[\n{rows}];\n")
}

pub fn factors(data: &Factors) -> String {
    let mut text = String::from("/// Every factor by size.\npub static FACTORS: &[Factor] = &[\n");
    for f in &data.factor {
        let _ = writeln!(
            text,
            "    Factor {{ kind: Kind::{}, classes: {}, thick: {:?}, wide: {:?}, fb: {}, fv: {}, fc_perp: {}, e: {}, \
             says: {:?}, source: {:?} }},",
            kind(&f.kind),
            classes(&f.class),
            f.thick,
            f.wide,
            ratio(&f.fb),
            ratio(&f.fv),
            ratio(&f.fc_perp),
            ratio(&f.e),
            f.says,
            cited(&f.source, &f.status, &f.note),
        );
    }
    text.push_str("];\n/// Load duration factors.\npub static DURATIONS: &[LoadTime] = &[\n");
    for d in &data.duration {
        let _ = writeln!(
            text,
            "    LoadTime {{ duration: Duration::{}, factor: {}, treated: {}, says: {:?}, source: {:?} }},",
            d.duration,
            ratio(&d.factor),
            d.treated,
            d.says,
            cited(&d.source, &d.status, ""),
        );
    }
    text.push_str("];\n/// Beam cases.\npub static BEAMS: &[BeamRow] = &[\n");
    for b in &data.beam {
        let _ = writeln!(
            text,
            "    BeamRow {{ case: Case::{}, bend: {}, moment: {}, says: {:?}, source: {:?} }},",
            b.case,
            ratio(&b.bend),
            ratio(&b.moment),
            b.says,
            cited(&b.source, &b.status, ""),
        );
    }
    text.push_str("];\n");
    text
}
