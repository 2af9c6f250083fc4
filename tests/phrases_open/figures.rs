//! Figures of the JSON contract as numbers.

use serde_json::Value;

/// Inches of a length object.
pub fn inches(value: &Value) -> Option<f64> {
    value["in"].as_str()?.parse().ok()
}

/// A plain number: JSON's, or its digits in a string.
pub fn number(value: &Value) -> Option<f64> {
    value.as_f64().or_else(|| value.as_str()?.parse().ok())
}

/// The figures of an answer that stand alone, by name: those in its lists are left out, and so
/// are the limit and the whole run's length, which go with every layout.
pub fn alone(values: &Value) -> Vec<(&str, &Value)> {
    let mut out = Vec::new();
    gather("", values, &mut out);
    out.retain(|(name, _)| !matches!(*name, "clear_max" | "run_length"));
    out
}

fn gather<'a>(name: &'a str, value: &'a Value, out: &mut Vec<(&'a str, &'a Value)>) {
    match value {
        Value::Object(fields) if !fields.contains_key("in") => {
            fields.iter().for_each(|(name, value)| gather(name, value, out));
        }
        Value::Array(_) | Value::Null => {}
        _ => out.push((name, value)),
    }
}

/// Inches of a tape reading: `17'-2 7/16"`, `3 5/8"`, `206 7/16`.
pub fn tape(text: &str) -> Option<f64> {
    let text = text.trim().trim_end_matches('"');
    let (feet, inches) = match text.split_once('\'') {
        Some((feet, inches)) => (feet.parse::<f64>().ok()?, inches.trim_start_matches('-')),
        None => (0.0, text),
    };
    let parts = inches.split_whitespace().map(part);
    parts.sum::<Option<f64>>().map(|inches| feet * 12.0 + inches)
}

fn part(text: &str) -> Option<f64> {
    match text.split_once('/') {
        Some((over, under)) => Some(over.parse::<f64>().ok()? / under.parse::<f64>().ok()?),
        None => text.parse().ok(),
    }
}

/// True where two figures differ by no more than `within`.
pub fn near(a: f64, b: f64, within: f64) -> bool {
    (a - b).abs() <= within
}

#[test]
fn tape_readings_are_read() {
    let rows = [("17'-2 7/16\"", 206.4375), ("3 5/8", 3.625), ("7/16\"", 0.4375), ("10'-0\"", 120.0)];
    for (text, want) in rows {
        assert_eq!(tape(text), Some(want), "{text}");
    }
    assert_eq!(tape("two"), None);
}
