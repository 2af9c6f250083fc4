//! A sum said step by step: "8'-6\" less 3 at 3 1/2, then half that". Times goes before plus, and what comes behind "then" is done to all
//! before it.

use crate::grammar::scores::{Line, Shape, Token, Value};
use crate::measure::Q;
use crate::sums::Expr;

/// A step of the line.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Step {
    Plus,
    Less,
    Times,
    Over,
    /// Of all so far: "half that".
    Half,
    Open,
    Close,
    /// All so far is one.
    Then,
}

/// The words and signs of each step.
const STEPS: &[(Step, &[&str])] = &[
    (Step::Plus, &["+", "plus", "add", "and"]),
    (Step::Less, &["-", "minus", "less", "take", "away", "off", "subtract", "knock"]),
    (Step::Times, &["*", "x", "@", "times", "lots"]),
    (Step::Over, &["/", "divide", "divided", "split", "over"]),
    (Step::Half, &["half", "halve", "halved"]),
    (Step::Open, &["("]),
    (Step::Close, &[")"]),
    (Step::Then, &["then"]),
];

/// What a step works on.
#[derive(Clone, Debug)]
enum Node<'a> {
    Said(&'a Value),
    Made(Expr),
}

impl Node<'_> {
    /// As a length; so many without a unit are inches.
    fn length(self) -> Option<Expr> {
        match self {
            Node::Said(value) => value.length().map(Expr::Length),
            Node::Made(expr) => Some(expr),
        }
    }

    /// As so many.
    fn count(&self) -> Option<Expr> {
        let Node::Said(value) = self else { return None };
        let counts = matches!(value.shape, Shape::Bare | Shape::Spoken | Shape::Word);
        value.number().filter(|q| counts && q.is_integer() && *q > Q::from_integer(0)).map(Expr::Number)
    }
}

/// The sum; `None` where two figures stand without a step between them, or a step lacks a figure.
pub(super) fn chain(line: &Line) -> Option<Expr> {
    let steps: Vec<Step> = line.tokens.iter().filter_map(step).collect();
    // One step alone is what is learned.
    let works = steps.iter().filter(|s| matches!(s, Step::Less | Step::Times | Step::Over | Step::Half)).count();
    let mut at = Reader { tokens: &line.tokens, at: 0 };
    let sum = at.sum()?;
    at.peek().is_none().then_some(())?;
    (works > 1).then(|| sum.length()).flatten()
}

fn step(token: &Token) -> Option<Step> {
    let said = token.word.as_deref().unwrap_or(&token.stem);
    STEPS.iter().find(|(_, words)| token.value.is_none() && words.contains(&said)).map(|(step, _)| *step)
}

/// The tokens from one on.
struct Reader<'a> {
    tokens: &'a [Token],
    at: usize,
}

/// What stands next: a step or a figure.
#[derive(Clone, Copy, Debug)]
enum Next<'a> {
    Step(Step),
    Value(&'a Value),
}

impl<'a> Reader<'a> {
    fn peek(&self) -> Option<Next<'a>> {
        self.tokens
            .get(self.at..)?
            .iter()
            .find_map(|t| t.value.as_ref().map(Next::Value).or_else(|| step(t).map(Next::Step)))
    }

    /// Past what stands next.
    fn skip(&mut self) {
        let rest = self.tokens.get(self.at..).unwrap_or_default();
        self.at += rest.iter().position(|t| t.value.is_some() || step(t).is_some()).map_or(rest.len(), |n| n + 1);
    }

    /// The steps that stand together: of "take away" one, of "and then split" the last.
    fn steps(&mut self) -> Option<(Step, bool)> {
        let (mut last, mut all) = (None, false);
        while let Some(Next::Step(step)) = self.peek() {
            match step {
                Step::Then => all = true,
                Step::Open | Step::Close => break,
                step => last = Some(step),
            }
            self.skip();
        }
        last.map(|step| (step, all))
    }

    /// Terms added and taken off.
    fn sum(&mut self) -> Option<Node<'a>> {
        let mut sum = self.term()?;
        while let Some(Next::Step(next)) = self.peek() {
            if next == Step::Close {
                break;
            }
            let from = self.at;
            let (step, all) = self.steps()?;
            sum = match step {
                Step::Half => halves(sum, Expr::Number(Q::from_integer(2)))?,
                Step::Plus => Node::Made(Expr::Plus(boxed(sum)?, boxed(self.term()?)?)),
                Step::Less => Node::Made(Expr::Less(boxed(sum)?, boxed(self.term()?)?)),
                Step::Over => halves(sum, self.atom()?.count()?)?,
                Step::Times if all => product(sum, self.atom()?)?,
                _ => {
                    self.at = from;
                    return None;
                }
            };
        }
        Some(sum)
    }

    /// Figures times and over figures.
    fn term(&mut self) -> Option<Node<'a>> {
        let mut term = self.atom()?;
        loop {
            let from = self.at;
            match self.steps() {
                Some((Step::Times, false)) => term = product(term, self.atom()?)?,
                Some((Step::Over, false)) => term = halves(term, self.atom()?.count()?)?,
                _ => {
                    self.at = from;
                    return Some(term);
                }
            }
        }
    }

    fn atom(&mut self) -> Option<Node<'a>> {
        match self.peek()? {
            Next::Value(value) => {
                self.skip();
                Some(Node::Said(value))
            }
            Next::Step(Step::Open) => {
                self.skip();
                let inner = self.sum()?;
                matches!(self.peek(), Some(Next::Step(Step::Close))).then(|| self.skip())?;
                Some(inner)
            }
            Next::Step(_) => None,
        }
    }
}

fn boxed(node: Node<'_>) -> Option<Box<Expr>> {
    node.length().map(Box::new)
}

/// So many of one length, whichever of the two counts.
fn product<'a>(a: Node<'a>, b: Node<'a>) -> Option<Node<'a>> {
    let (n, of) = match (a.count(), b.count()) {
        (Some(n), _) => (n, b),
        (None, Some(n)) => (n, a),
        (None, None) => return None,
    };
    Some(Node::Made(Expr::Times(Box::new(n), boxed(of)?)))
}

fn halves(of: Node<'_>, parts: Expr) -> Option<Node<'_>> {
    Some(Node::Made(Expr::Over(boxed(of)?, Box::new(parts))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::Value as Figure;
    use crate::measure::Length;
    use crate::sums::{Sum, answer};
    use pretty_assertions::assert_eq;

    #[test]
    fn a_sum_is_worked_step_by_step() {
        let rows: [(&str, Option<Length>); 6] = [
            // 126 - 4 x 5 1/2 = 104; half is 52.
            ("10'6 less 4 @ 5 1/2 then half that", Some(Length::inches(52))),
            ("(10'6 - 4*5 1/2)/2", Some(Length::inches(52))),
            (
                "begin with ten foot six, take away four lots of five and a half inches, and then split what's left in two",
                Some(Length::inches(52)),
            ),
            // 30 + 2 x 3 1/2 = 37.
            ("30 plus 2 times 3 1/2 minus 0", Some(Length::inches(37))),
            // Two figures without a step between them.
            ("10'6 less 4 5 1/2\" bits then half", None),
            // A bracket that stays open.
            ("(10'6 - 4*5 1/2 / 2", None),
        ];
        for (line, want) in rows {
            let made = chain(&Line::read(line, &[])).and_then(|expr| answer(&Sum::Value(expr)).ok());
            let length = made.and_then(|(fig, _)| if let Figure::Length(l) = fig.value() { Some(l) } else { None });
            assert_eq!(length, want, "{line}");
        }
    }
}
