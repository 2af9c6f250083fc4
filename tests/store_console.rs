//! The job file at the console, as a person sees it.

#[cfg(unix)]
mod pty;

#[cfg(unix)]
mod screen {
    use super::pty::{Terminal, fresh_home};

    const HEAD: &str = "railhand job, version 1, defaults 1\n";

    /// A paste comes as one text with breaks in it: one undo takes it back, on another day too.
    #[test]
    fn a_paste_is_one_group_and_an_undo_takes_it_back_another_day() {
        let home = fresh_home("paste-group");
        let file = home.join("deck.job");
        let name = file.to_str().expect("the temporary folder's name is text");
        let text = || std::fs::read_to_string(&file).expect("the file is there");

        let mut term = Terminal::open_with(&home, 80, &[], &[name]);
        term.wait_for_prompt();
        term.enter("note: typed");
        term.press("\u{1b}[200~note: one\r\nnote: two\n\u{1b}[201~\r");
        term.wait("both answers", |rows| rows.iter().filter(|r| r.starts_with("heard: note: ")).count() == 3);
        term.wait_for_prompt();
        term.press("\u{4}");
        assert_eq!(term.end(), 0);
        assert_eq!(text(), format!("{HEAD}note: typed\nnote: one\n  note: two\n"));

        let mut term = Terminal::open_with(&home, 80, &[], &[name]);
        term.wait_for_prompt();
        assert!(term.rows().iter().any(|r| r.contains("3 lines told.")), "{:?}", term.rows());
        term.enter("undo");
        term.wait_for_prompt();
        assert_eq!(text(), format!("{HEAD}note: typed\n"));
        term.press("\u{4}");
        assert_eq!(term.end(), 0);
        std::fs::remove_dir_all(home).expect("it was made above");
    }
}
