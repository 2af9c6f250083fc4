//! What the scores make of a line beside what its own labels make of it: the material its odds are fitted on.
//!
//! For measuring alone: `RAILHAND_COMPARE` names the file a row is added to for each line, beside `RAILHAND_TRUTH` and `RAILHAND_WEIGHTS`.

use super::evidence::Evidence;
use super::pool::{Candidate, is_same};
use crate::grammar::canon;
use std::io::Write;

/// Adds what the likeliest candidate rests on, whether it is what was meant, and where among the candidates that stands.
pub(super) fn compared(line: &str, pool: &[Candidate], evidence: &Evidence, meant: Option<&Candidate>) {
    let Some(best) = pool.first() else { return };
    let Some(file) = std::env::var_os("RAILHAND_COMPARE") else { return };
    let at = meant.and_then(|m| pool.iter().position(|c| is_same(c, m)));
    let row = [
        evidence.kind.name().to_owned(),
        at.map_or("none".to_owned(), |at| at.to_string()),
        u8::from(meant.is_some()).to_string(),
        best.odds.to_string(),
        evidence.features.map(|f| f.to_string()).join(" "),
        line.replace('\t', " "),
        canon::write(&best.act).replace(['\t', '\n'], " "),
        meant.map(|m| canon::write(&m.act)).unwrap_or_default().replace(['\t', '\n'], " "),
    ];
    let open = std::fs::OpenOptions::new().create(true).append(true).open(file);
    let written = open.and_then(|mut f| writeln!(f, "{}", row.join("\t")));
    if let Err(why) = written {
        tracing::warn!(%why, "not compared");
    }
}
