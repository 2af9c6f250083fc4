//! No engine, rule, answer or drawing reads a setting, or falls back to a constant, by itself: figures come from `solve`.
//!
//! What the search looks for cannot be seen by the compiler: the settings' fields are public to the rooms that keep, write and read them.

use std::path::{Path, PathBuf};

/// Rooms whose business the settings are: they keep them, write them, say them back, or ask what was told.
const KEEPERS: [&str; 9] = [
    "src/job/",
    "src/solve/",
    "src/quantity/",
    "src/limits/",
    "src/store/",
    "src/grammar/",
    "src/session/resolve",
    "src/reply/json_",
    "src/figure/",
];

/// A default made on the spot; one that is only looked at has an arrow or an alternative behind it.
const SIGNS: [&str; 2] = ["Why::Default(&", "Why::Default(limit))"];

/// Fields of the settings that are rows of the table. Whose law holds is no figure: it is read to cite it.
const FIELDS: [&str; 26] = [
    "height_top",
    "gap_under",
    "baluster",
    "gap_max",
    "clear_max",
    "centre_max",
    "grade",
    "overhang",
    "skirt",
    "rim",
    "line",
    "hold_back",
    "joists",
    "first_joist",
    "notch",
    "mount",
    "fixing",
    "house_end",
    "pool",
    "joists_run",
    "blocking",
    "view",
    "tape",
    "timber",
    "foot",
    "posts",
];

/// Whether a word of the code ends there.
fn ends(rest: &str) -> bool {
    !rest.starts_with(|c: char| c.is_alphanumeric() || c == '_')
}

fn sources(dir: &Path, out: &mut Vec<PathBuf>) {
    let entries = std::fs::read_dir(dir).expect("the source is here");
    for path in entries.map(|e| e.expect("an entry").path()) {
        match path.is_dir() {
            true => sources(&path, out),
            false if path.extension().is_some_and(|e| e == "rs") => out.push(path),
            false => {}
        }
    }
}

/// Whether a line reads a field of the settings, or a limit's own value.
fn reads(line: &str) -> bool {
    let code = line.split("//").next().unwrap_or("");
    let field = |f: &&str| {
        let at = format!("settings.{f}");
        code.match_indices(&at).any(|(i, _)| ends(&code[i + at.len()..]))
    };
    // A copy of the order taken whole reads nothing of it.
    let order = code.match_indices("job.order.").any(|(i, at)| !code[i + at.len()..].starts_with("clone()"));
    let constant = code.match_indices("limits::").any(|(i, _)| {
        let name: String = code[i + 8..].chars().take_while(|c| c.is_ascii_uppercase() || *c == '_').collect();
        !name.is_empty() && code[i + 8 + name.len()..].starts_with(".length()")
    });
    FIELDS.iter().any(field)
        || order
        || code.contains("settings.post(")
        || constant
        || SIGNS.iter().any(|s| code.contains(s))
}

#[test]
fn figures_come_from_the_solver_alone() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files = Vec::new();
    sources(&root.join("src"), &mut files);
    let mut found = Vec::new();
    for file in files {
        let name = file.strip_prefix(root).expect("below the root").to_string_lossy().replace('\\', "/");
        if KEEPERS.iter().any(|k| name.starts_with(k)) {
            continue;
        }
        let text = std::fs::read_to_string(&file).expect("a source file");
        let before_tests = text.split("#[cfg(test)]").next().unwrap_or("");
        let lines = before_tests.lines().enumerate().filter(|(_, l)| reads(l));
        found.extend(lines.map(|(n, l)| format!("{name}:{}: {}", n + 1, l.trim())));
    }
    assert!(found.is_empty(), "{} places read by themselves:\n{}", found.len(), found.join("\n"));
}

/// The search itself: it finds what it should and nothing else.
#[test]
fn the_search_sees_what_it_should() {
    for line in [
        "let h = job.settings.height_top;",
        "a < limits::LANDING.length()",
        "Fig::length(l, Why::Default(&limits::KERF))",
    ] {
        assert!(reads(line), "{line}");
    }
    for line in [
        "job.settings.law",
        "// job.settings.height_top",
        "limits::KERF.source",
        "settings.lines()",
        "in_force(job, &limits::LANDING)",
    ] {
        assert!(!reads(line), "{line}");
    }
}

/// `taken` is for rows that have a default: one without would be nothing long, and said.
#[test]
fn only_rows_with_a_default_are_taken() {
    use railhand::quantity::{Default, ROWS};
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files = Vec::new();
    sources(&root.join("src"), &mut files);
    let mut seen = 0;
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a source file");
        for (at, _) in text.match_indices("taken(") {
            let call = text[at..].split(')').next().unwrap_or("");
            let Some((_, row)) = call.split_once("RowId::") else { continue };
            let found = ROWS.iter().find(|r| format!("{:?}", r.id) == row).unwrap_or_else(|| panic!("{call}"));
            assert!(!matches!(found.default, Default::None), "{}: {call})", file.display());
            seen += 1;
        }
    }
    assert!(seen > 10, "{seen}");
}
