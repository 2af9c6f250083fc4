//! What a person sees while typing: colours, the hint, what Tab offers, what waits.

#[cfg(unix)]
mod pty;

#[cfg(unix)]
mod keys {
    use super::pty::Terminal;
    use std::time::{Duration, Instant};

    fn wrote(term: &Terminal, from: usize) -> String {
        String::from_utf8_lossy(&term.raw()[from..]).into_owned()
    }

    /// SGR 38;5;n sets one of 256 colours, SGR 4 underlines (ISO 8613-6, ECMA-48).
    #[test]
    fn words_are_coloured_by_kind_and_what_is_not_read_is_underlined() {
        let mut term = Terminal::open("colours", 100, &[]);
        term.wait_for_prompt();
        let from = term.raw().len();
        term.press("run 10 ft zork corner");
        term.wait("typed line", |rows| rows.iter().any(|r| r.contains("zork corner")));
        let start = Instant::now();
        let painted = ["\u{1b}[38;5;28m10 ft", "\u{1b}[38;5;31mcorner", "\u{1b}[4mzork"];
        while !painted.iter().all(|p| wrote(&term, from).contains(p)) {
            assert!(start.elapsed() < Duration::from_secs(10), "{:?}", wrote(&term, from));
            std::thread::sleep(Duration::from_millis(5));
        }
        assert_eq!(term.leave(), 0);
    }

    #[test]
    fn the_hint_is_the_reading_and_never_gets_into_the_line() {
        let mut term = Terminal::open("hint", 100, &[]);
        term.wait_for_prompt();
        term.press("guard height 36");
        term.wait("hint", |rows| rows.iter().any(|r| r.starts_with("> guard height 36  = height: 36\" to the top")));
        // End and the right arrow take a hint in, where there is one to take.
        term.press("\u{1b}[C\u{1b}[F\r");
        term.wait("answer", |rows| rows.iter().any(|r| r.starts_with("heard: height: 36\" to the top")));
        term.wait_for_prompt();
        assert!(term.rows().iter().any(|r| r.trim_end() == "> guard height 36"), "{:?}", term.rows());
        assert_eq!(term.leave(), 0);
    }

    #[test]
    fn no_hint_without_colour_and_none_where_there_is_no_room() {
        for (name, columns, env) in [("hint-plain", 100, &[("NO_COLOR", "1")][..]), ("hint-narrow", 30, &[])] {
            let mut term = Terminal::open(name, columns, env);
            term.wait_for_prompt();
            term.press("guard height 36");
            term.wait("typed line", |rows| rows.iter().any(|r| r.trim_end() == "> guard height 36"));
            term.press("\r");
            term.wait_for_prompt();
            assert_eq!(term.leave(), 0);
        }
    }

    #[test]
    fn tab_offers_what_fits() {
        let mut term = Terminal::open("tab", 80, &[]);
        term.wait_for_prompt();
        term.press("run 10 ft house to co\t");
        term.wait("the word completed", |rows| rows.iter().any(|r| r.starts_with("> run 10 ft house to corner")));
        term.press("\r");
        term.wait_for_prompt();
        term.press("posts \t");
        term.wait("sizes", |rows| ["4x4", "4x6", "6x6"].iter().all(|s| rows.iter().any(|r| r.starts_with(s))));
        assert_eq!(term.leave(), 0);
    }

    #[test]
    fn tab_offers_a_question_s_choices() {
        let mut term = Terminal::open("tab-choices", 90, &[]);
        term.wait_for_prompt();
        term.enter("10x14");
        term.press("\t");
        term.wait("the choices", |rows| {
            rows.iter().any(|r| r.starts_with("1  deck: 10'")) && rows.iter().any(|r| r.starts_with("2  deck: 14'"))
        });
        assert_eq!(term.leave(), 0);
    }

    /// The window has 30 rows.
    #[test]
    fn a_long_answer_waits_and_more_shows_it() {
        let mut term = Terminal::open("more", 80, &[]);
        term.wait_for_prompt();
        for line in
            ["front 16 ft corner to corner", "right 12 ft corner to house", "left 12 ft house to corner", "layout"]
        {
            term.enter(line);
        }
        term.wait("what waits", |rows| rows.iter().any(|r| r.contains("rows wait: say more")));
        term.enter("more");
        term.wait("the rest", |rows| rows.iter().any(|r| r.contains("In all:")));
        term.enter("more");
        term.wait("no more", |rows| rows.iter().any(|r| r.contains("no more to the last answer")));
        assert_eq!(term.leave(), 0);
    }

    /// ESC [ 200 ~ and ESC [ 201 ~ stand around what is pasted (bracketed paste).
    #[test]
    fn a_paste_of_many_lines_is_answered_line_by_line() {
        let mut term = Terminal::open("many", 80, &[]);
        term.wait_for_prompt();
        term.press("\u{1b}[200~guard height 36\ngap under 3\nmost clear 5 ft\u{1b}[201~");
        term.wait("the paste", |rows| rows.iter().any(|r| r.contains("most clear 5 ft")));
        term.press("\r");
        let heard = ["heard: height: 36\"", "heard: gap under: 3\"", "heard: most clear: 5'"];
        term.wait("each answer", |rows| heard.iter().all(|h| rows.iter().any(|r| r.starts_with(h))));
        term.wait_for_prompt();
        term.enter("undo");
        term.enter("what is told");
        term.wait("nothing told", |rows| rows.iter().any(|r| r.to_lowercase().contains("nothing")));
        assert_eq!(term.leave(), 0);
    }

    #[test]
    fn wide_and_narrow_windows_are_written_on_within_their_edges() {
        for columns in [40, 200] {
            let mut term = Terminal::open(&format!("wide-{columns}"), columns, &[]);
            term.wait_for_prompt();
            term.enter("10 ft house to corner");
            assert!(!term.broke_a_row(), "{columns}: {:?}", term.rows());
            assert_eq!(term.leave(), 0);
        }
    }

    /// The editor asks where the cursor is; a terminal that never says must not hold up the talk for long.
    #[test]
    fn a_terminal_that_does_not_answer_is_no_stall() {
        let mut term = Terminal::open_deaf("deaf", 80);
        term.press("guard height 36\r");
        term.wait("answer", |rows| rows.iter().any(|r| r.starts_with("heard: height: 36\"")));
        term.press("\u{4}");
        assert_eq!(term.end(), 0);
    }
}
