//! A yard's price list on the command line. The lists are invented.

mod cli;

use cli::{Folder, objects, railhand};
use pretty_assertions::assert_eq;

const BAYS: [&str; 5] =
    ["two bays at 58", "2x4s come in 8s", "2x2s come in 8s", "pickets are 32 long", "what does it cost"];

fn told(folder: &Folder, list: &str, json: bool) -> std::process::Output {
    let path = folder.write("yard.csv", list.as_bytes());
    let mut args = vec!["say"];
    args.extend(BAYS);
    args.extend(["--prices", &path]);
    args.extend(json.then_some("--json"));
    railhand(&args, b"")
}

#[test]
fn prices_of_a_list_are_told_first_and_the_rest_is_named_by_its_line() {
    let folder = Folder::new("prices");
    let out = told(&folder, "size,feet,each\n2x4,8,7.98\n\ndeck screws,1,31\n2x4,8,free\n2x4,8,0\n", false);
    let aside = String::from_utf8_lossy(&out.stderr);
    assert!(aside.contains("1 price taken."), "{aside}");
    assert!(aside.contains("nothing taken from line 4, 5, 6"), "{aside}");
    assert!(!aside.contains("screws"), "{aside}");
    assert_eq!(out.status.code(), Some(0));
}

#[test]
fn a_bill_is_made_from_the_list() {
    let folder = Folder::new("priced");
    let out = told(&folder, "2x4x8,$7.98\n2x2x8,3.00\n", true);
    let answers = objects(&out.stdout);
    // Rails of 58 in.: one a stick of 96, four sticks at 7.98. Ten balusters a bay (gaps of 3 10/11), two of
    // 32 in. a stick, ten sticks at 3: 31.92 + 30.
    assert_eq!(answers[4]["values"]["cost"], "61.92", "{}", answers[4]);
}

#[test]
fn a_list_that_cannot_be_read_is_said_and_nothing_is_answered() {
    let folder = Folder::new("no-list");
    let missing = folder.path("none.csv");
    let out = railhand(&["say", "half of 9-7", "--prices", &missing], b"");
    assert_eq!((out.status.code(), out.stdout.is_empty()), (Some(1), true));
    assert!(String::from_utf8_lossy(&out.stderr).contains("none.csv"));
}
