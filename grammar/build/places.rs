//! Places and the editions of a source as static tables.

use super::trust;
use serde::Deserialize;

#[derive(Deserialize)]
pub struct Places {
    place: Vec<Place>,
}

#[derive(Deserialize)]
struct Place {
    id: String,
    name: String,
    words: Vec<String>,
    note: String,
    #[serde(default)]
    abroad: bool,
    #[serde(default)]
    limit: Vec<Local>,
}

#[derive(Deserialize)]
struct Local {
    limit: String,
    value: String,
    source: String,
    status: String,
}

/// Every place, its words and its values.
pub fn places(data: &Places) -> String {
    let rows: String = data.place.iter().map(place).collect();
    format!("/// Every place there are values for.\npub static PLACES: &[Place] = &[\n{rows}];\n")
}

fn place(p: &Place) -> String {
    let limits: String = p.limit.iter().map(local).collect();
    let words = p.words.join("\", \"");
    format!(
        "    Place {{ id: {:?}, name: {:?}, words: &[\"{words}\"], note: {:?}, abroad: {}, limits: &[{limits}] }},\n",
        p.id, p.name, p.note, p.abroad
    )
}

fn local(l: &Local) -> String {
    let limit = l.limit.replace('-', "_").to_uppercase();
    let (num, den, metric) = length(&l.value);
    format!(
        "PlaceLimit {{ limit: &{limit}, inches: ({num}, {den}), metric: {metric}, source: {:?}, trust: Trust::{} }}, ",
        super::cited(&l.source, &l.status),
        trust(&l.status)
    )
}

/// "42 in" or "1070 mm" as a fraction of inches; an inch is 25.4 mm.
fn length(text: &str) -> (i64, i64, bool) {
    let (number, unit) = text.split_once(' ').unwrap_or_else(|| panic!("{text:?} has no unit"));
    let number: i64 = number.parse().unwrap_or_else(|e| panic!("{text:?}: {e}"));
    match unit {
        "in" => (number, 1, false),
        "mm" => (number * 5, 127, true),
        _ => panic!("{text:?} is in neither in nor mm"),
    }
}

/// The section of each edition held, out of "IRC A (2018, 2021); B (2024)"; what is not so
/// written has one text for all, and so has a rule that not every edition has. A part without
/// years goes with every section.
pub fn by_edition(source: &str) -> [String; 3] {
    let named: Vec<(&str, Vec<(&str, bool)>)> = source.split("; ").filter_map(section).collect();
    let everywhere = source.split("; ").filter(|part| section(part).is_none() && !part.starts_with("not in"));
    let everywhere: String = everywhere.map(|part| format!("; {part}")).collect();
    ["2018", "2021", "2024"].map(|year| {
        let of_year = |(text, years): &(&str, Vec<(&str, bool)>)| {
            years.iter().find(|(y, _)| *y == year).map(|(_, memory)| (text.to_string(), *memory))
        };
        named.iter().find_map(of_year).map_or(source.to_owned(), |(text, memory)| {
            let code = if text.starts_with("IRC ") { "" } else { "IRC " };
            let memory = if memory { ", from memory" } else { "" };
            format!("{code}{text} ({year}{memory}){everywhere}")
        })
    })
}

/// "IRC R312.1.2" and its years out of "IRC R312.1.2 (2018, 2021 from memory)", each with whether
/// its section is from memory. Only the IRC's sections are told apart by edition.
fn section(part: &str) -> Option<(&str, Vec<(&str, bool)>)> {
    let (text, years) = part.strip_suffix(')')?.rsplit_once(" (")?;
    let (years, both) = years.strip_suffix(", both from memory").map_or((years, false), |y| (y, true));
    let year = |y| {
        let (y, memory): (&str, bool) = str::strip_suffix(y, " from memory").map_or((y, both), |y| (y, true));
        (y.len() == 4 && y.bytes().all(|b| b.is_ascii_digit())).then_some((y, memory))
    };
    let years: Option<Vec<_>> = years.split(", ").map(year).collect();
    let of_irc = text.starts_with("IRC ") || text.starts_with('R');
    years.filter(|_| of_irc).map(|years| (text, years))
}
