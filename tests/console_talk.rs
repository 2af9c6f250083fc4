//! The console with the whole engine behind it.

#[cfg(unix)]
mod pty;

#[cfg(unix)]
mod talk {
    use super::pty::Terminal;

    #[test]
    fn a_line_typed_is_answered_on_the_screen() {
        let mut term = Terminal::open("answers", 80, &[]);
        term.wait_for_prompt();
        term.enter("half of 9 ft");
        assert!(term.rows().iter().any(|r| r.contains("4'-6\"")), "{:?}", term.rows());
    }

    /// Pasted as a terminal with bracketed paste hands it over: one text with breaks in it.
    #[test]
    fn pasted_lines_are_answered_in_turn() {
        let mut term = Terminal::open("in-turn", 80, &[]);
        term.wait_for_prompt();
        term.press("\u{1b}[200~half of 9 ft\r\nhalf of 22 ft\n\u{1b}[201~\r");
        term.wait("both answers", |rows| {
            let row = |text: &str| rows.iter().position(|r| !r.starts_with('>') && r.contains(text));
            matches!((row("4'-6\""), row("11'-0\"")), (Some(a), Some(b)) if a < b)
        });
    }

    /// Where the terminal broke the rows itself, the figure would be cut at the edge.
    #[test]
    fn a_figure_stays_whole_on_a_narrow_screen() {
        let mut term = Terminal::open("narrow", 40, &[]);
        term.wait_for_prompt();
        term.enter("run 10'-6 3/4\" between corner and stair head, gate at top");
        let answered = |r: &String| r.contains("10'-6 3/4\"") && !r.starts_with('>');
        assert!(term.rows().iter().any(answered), "{:?}", term.rows());
    }
}
