//! A long answer folded to a window: what must be seen stays, details wait for "more".

use super::plain::Shown;

/// A folded answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Folded {
    /// What is shown.
    pub shown: Vec<Shown>,
    /// What waits, in order; empty where all is shown.
    pub waits: Vec<Shown>,
    /// Before which of the lines shown the waiting ones stand.
    pub at: usize,
}

fn height(line: &Shown) -> usize {
    line.text.split('\n').count()
}

/// Folds lines to about `most` rows. Only what may wait does: the answer, questions with their choices, stops and
/// checks are always shown, however many they are.
pub fn fold(lines: Vec<Shown>, most: usize) -> Folded {
    // Folding two rows away to tell of them in one is no gain.
    if rows(&lines) <= most + 2 {
        return Folded { shown: lines, waits: Vec::new(), at: 0 };
    }
    let must: usize = lines.iter().filter(|l| !l.may_wait).map(height).sum();
    let mut room = most.saturating_sub(must);
    let (mut shown, mut waits, mut at) = (Vec::new(), Vec::new(), None);
    for line in lines {
        let fits = at.is_none() && height(&line) <= room;
        if !line.may_wait {
            shown.push(line);
        } else if fits {
            room -= height(&line);
            shown.push(line);
        } else {
            at.get_or_insert(shown.len());
            waits.push(line);
        }
    }
    let at = at.unwrap_or(shown.len());
    Folded { shown, waits, at }
}

/// How many rows lines take.
pub fn rows(lines: &[Shown]) -> usize {
    lines.iter().map(height).sum()
}

#[cfg(test)]
mod tests {
    use super::super::plain::Tone;
    use super::*;
    use proptest::prelude::*;

    fn line(text: &str, may_wait: bool) -> Shown {
        Shown { tone: Tone::Plain, may_wait, text: text.to_owned() }
    }

    #[test]
    fn details_wait_and_cautions_do_not() {
        let lines =
            vec![line("answer", false), line("a", true), line("b\nc", true), line("d", true), line("stop", false)];
        let folded = fold(lines, 3);
        let text = |l: &[Shown]| l.iter().map(|s| s.text.clone()).collect::<Vec<_>>();
        assert_eq!(text(&folded.shown), ["answer", "a", "stop"]);
        assert_eq!(text(&folded.waits), ["b\nc", "d"]);
        assert_eq!((folded.at, rows(&folded.waits)), (2, 3));
    }

    proptest! {
        #[test]
        fn nothing_is_lost_and_what_must_be_seen_is(
            lines in prop::collection::vec(("[a-z]{1,3}(\n[a-z]{1,3}){0,3}", any::<bool>()), 0..20),
            most in 0_usize..30,
        ) {
            let lines: Vec<Shown> = lines.into_iter().map(|(text, wait)| line(&text, wait)).collect();
            let folded = fold(lines.clone(), most);
            prop_assert!(folded.waits.iter().all(|l| l.may_wait));
            prop_assert!(folded.at <= folded.shown.len());
            let must = |l: &[Shown]| l.iter().filter(|s| !s.may_wait).cloned().collect::<Vec<_>>();
            prop_assert_eq!(must(&folded.shown), must(&lines));
            let may: Vec<Shown> = folded.shown.iter().filter(|s| s.may_wait).chain(&folded.waits).cloned().collect();
            prop_assert_eq!(may, lines.iter().filter(|s| s.may_wait).cloned().collect::<Vec<_>>());
        }
    }
}
