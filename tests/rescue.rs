//! Where the program itself makes a mistake: one line that says sorry, status 70, and nothing told is lost.
//! A debug build fails at the line that RAILHAND_STUMBLE names.

mod cli;
#[cfg(unix)]
mod pty;

use cli::{Folder, command};
use pretty_assertions::assert_eq;

/// EX_SOFTWARE of sysexits.h is 70: <https://man.freebsd.org/cgi/man.cgi?sysexits>, from memory.
const SOFTWARE: i32 = 70;

#[test]
fn a_mistake_says_sorry_in_one_line_and_leaves_status_70() {
    let folder = Folder::new("rescue");
    let file = folder.path("deck.job");
    let said = ["say", "--job", &file, "run 10 ft house to corner", "36 high", "fail here", "42 high"];
    let out = command(&said).env("RAILHAND_STUMBLE", "fail here").output().expect("the program starts");
    assert_eq!(out.status.code(), Some(SOFTWARE));
    let errors = String::from_utf8_lossy(&out.stderr);
    assert_eq!(errors.lines().count(), 1, "{errors}");
    assert!(errors.starts_with("railhand: sorry, that was a mistake of mine ("), "{errors}");
    // Answered lines are in the file; the ones behind the mistake were never taken.
    assert_eq!(folder.text("deck.job").lines().count(), 3, "{}", folder.text("deck.job"));
    assert!(folder.text("deck.job").contains("height: 36\" to the top"));
}

#[cfg(unix)]
mod at_a_terminal {
    use super::pty::{Terminal, fresh_home};
    use super::{Folder, SOFTWARE};
    use pretty_assertions::assert_eq;
    use railhand::store::Store;

    fn stumbled(name: &str, file: &[&str]) -> (std::path::PathBuf, String, u32) {
        let home = fresh_home(name);
        let mut term = Terminal::open_with(&home, 100, &[("RAILHAND_STUMBLE", "fail here")], file);
        term.wait_for_prompt();
        term.enter("run 10 ft house to corner");
        term.enter("36 high");
        term.enter("42 high");
        term.enter("undo");
        term.press("fail here\r");
        term.wait("the apology", |rows| rows.concat().contains("you gave me."));
        let rows = term.rows().join("\n");
        let status = term.end();
        (home, rows, status)
    }

    #[test]
    fn without_a_job_file_what_was_told_is_put_in_one() {
        let (home, rows, status) = stumbled("rescue-memory", &[]);
        assert_eq!(status, SOFTWARE.unsigned_abs());
        let kept = std::fs::read_dir(home.join("railhand")).expect("its folder");
        let kept = kept.map(|e| e.expect("an entry").path()).find(|p| p.extension().is_some_and(|e| e == "job"));
        let kept = kept.unwrap_or_else(|| panic!("no file:\n{rows}"));
        let opened = Store::open(&kept).expect("it is a job file");
        assert_eq!((opened.odd.len(), opened.session.job().runs.len()), (0, 1));
        assert_eq!(opened.session.told_phrases().last().map(String::as_str), Some("height: 36\" to the top"));
        std::fs::remove_dir_all(home).expect("it can be cleared away");
    }

    #[test]
    fn with_a_job_file_it_says_where_what_was_told_is() {
        let folder = Folder::new("rescue-file");
        let file = folder.path("deck.job");
        let (home, rows, status) = stumbled("rescue-kept", &[&file]);
        assert_eq!(status, SOFTWARE.unsigned_abs());
        assert!(rows.replace('\n', "").contains("What you told me is in"), "{rows}");
        assert!(folder.text("deck.job").contains("height: 36\" to the top"));
        std::fs::remove_dir_all(home).expect("it can be cleared away");
    }
}
