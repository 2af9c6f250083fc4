//! The console as a person sees it, whatever the answers are.

#[cfg(unix)]
mod pty;

#[cfg(unix)]
mod screen {
    use super::pty::{Terminal, fresh_home};

    #[test]
    fn control_d_leaves() {
        let mut term = Terminal::open("leaves", 80, &[]);
        term.wait_for_prompt();
        term.press("\u{4}");
        assert_eq!(term.end(), 0);
    }

    #[test]
    fn a_word_leaves() {
        for word in ["quit", "exit", "Bye"] {
            let mut term = Terminal::open(&format!("word-{word}"), 80, &[]);
            term.wait_for_prompt();
            term.press(&format!("{word}\r"));
            assert_eq!(term.end(), 0, "{word}");
        }
    }

    #[test]
    fn control_c_clears_the_line_and_stays() {
        let mut term = Terminal::open("clears", 80, &[]);
        term.wait_for_prompt();
        term.press("run 12 ft frm");
        term.wait_for_last("> run 12 ft frm");
        term.press("\u{3}");
        term.wait_for_prompt();
        term.press("thanks");
        term.wait_for_last("> thanks");
        assert_eq!(term.leave(), 0);
    }

    #[test]
    fn the_first_run_teaches_and_the_second_does_not() {
        let home = fresh_home("teaches");
        let mut term = Terminal::open_in(&home, 80, &[]);
        term.wait_for_prompt();
        assert!(term.rows()[0].contains("run 14-3 between house and corner"), "{:?}", term.rows());
        term.enter("hello there");
        term.press("\u{4}");
        assert_eq!(term.end(), 0);

        let mut term = Terminal::open_in(&home, 80, &[]);
        term.wait_for_prompt();
        assert_eq!(term.rows()[0].trim_end(), ">");
        term.press("\u{1b}[A");
        term.wait_for_last("> hello there");
        std::fs::remove_dir_all(home).expect("it was made above");
    }

    #[test]
    fn a_history_that_cannot_be_kept_is_no_error() {
        let home = fresh_home("unkept");
        let file = home.join("railhand");
        std::fs::write(&file, "a file where a folder is wanted").expect("it is writable");
        let mut term = Terminal::open_in(&home, 80, &[]);
        term.wait_for_prompt();
        term.enter("thanks");
        term.press("\u{4}");
        assert_eq!(term.end(), 0);
        std::fs::remove_dir_all(home).expect("it was made above");
    }

    /// ESC ] 0 sets a window's title, ESC [ 2 J clears the screen (ECMA-48 and xterm's
    /// control sequences): pasted, they are text. U+009B is ESC [ in one character.
    #[test]
    fn a_paste_cannot_steer_the_terminal() {
        let mut term = Terminal::open("paste", 80, &[]);
        term.wait_for_prompt();
        let before = term.raw().len();
        term.press("\u{1b}[200~a\u{1b}]0;owned\u{7}b\u{9b}2Jc\u{202e}d\u{1b}[201~");
        term.wait("pasted text", |rows| rows.iter().any(|r| r.contains("owned")));
        term.press("\r");
        term.wait_for_prompt();
        let wrote = String::from_utf8_lossy(&term.raw()[before..]).into_owned();
        for raw in ["\u{1b}]0;", "\u{7}", "\u{9b}", "\u{202e}", "\u{1b}[2J"] {
            assert!(!wrote.contains(raw), "{raw:?} in {wrote:?}");
        }
        assert!(term.rows()[0].contains("run 14-3"), "the screen was not cleared");
    }

    #[test]
    fn typed_bytes_that_are_no_text_do_no_harm() {
        let mut term = Terminal::open("bytes", 80, &[]);
        term.wait_for_prompt();
        term.press_bytes(b"a\xff\xfe\x00b\xc2\x9b31m\x1c\r");
        term.wait_for_prompt();
        term.press("thanks");
        term.wait("second line", |rows| rows.iter().any(|r| r.starts_with('>') && r.contains("thanks")));
        assert!(!String::from_utf8_lossy(&term.raw()).contains('\u{9b}'));
        assert_eq!(term.leave(), 0);
    }

    #[test]
    fn a_dumb_terminal_gets_no_escape_sequence() {
        let mut term = Terminal::open("dumb", 80, &[("TERM", "dumb")]);
        term.wait_for_prompt();
        term.enter("thanks");
        assert!(!term.raw().contains(&0x1b), "{:?}", String::from_utf8_lossy(&term.raw()));
        term.press("\u{4}");
        assert_eq!(term.end(), 0);
    }

    #[test]
    fn a_resize_between_lines_does_no_harm() {
        let mut term = Terminal::open("resize", 80, &[]);
        term.wait_for_prompt();
        term.resize(40);
        term.enter("thanks");
        term.resize(120);
        term.press("thanks");
        term.wait_for_last("> thanks");
        assert_eq!(term.leave(), 0);
    }

    /// The editor itself paints unless told not to: ESC [ 3 and ESC [ 9 open the colours of ECMA-48.
    #[test]
    fn no_color_means_none() {
        let mut term = Terminal::open("plain", 80, &[("NO_COLOR", "1")]);
        term.wait_for_prompt();
        term.enter("most clear 9 ft");
        let raw = String::from_utf8_lossy(&term.raw()).into_owned();
        for colour in ["\u{1b}[3", "\u{1b}[9", "\u{1b}[1;31m"] {
            assert!(!raw.contains(colour), "{raw:?}");
        }
        assert_eq!(term.leave(), 0);
    }

    #[test]
    fn a_narrow_screen_is_written_on_within_its_edge() {
        let term = Terminal::open("narrow-welcome", 40, &[]);
        term.wait_for_prompt();
        assert!(term.rows().iter().any(|row| row.contains("house and corner")), "{:?}", term.rows());
        assert!(!term.broke_a_row(), "{:?}", term.rows());
        assert_eq!(term.leave(), 0);
    }
}
