//! Sums at the prompt, read over a whole line.
//!
//! ```text
//! line     = lead* (pieces | sticks | convert | diagonal | bigger | difference | chain) trail*
//! chain    = ["add"] term (("plus" | "and" | "less") term)* ["total"] | take | split | ...
//! take     = ["take"] term "off" term                  -- the order flips
//! split    = ["split"] term ("into" | "divided by") count ["ways"]
//! term     = count ("times" | "at" | noun "of") amount | amount "times" count
//!          | ("half" | "third" | "quarter") "of" term | amount ["doubled" | "halved"]
//! ```

use super::ahead::{Ahead, Watch};
use super::draft::{Clause, Left, Reading, Weight};
use super::effort::Effort;
use super::items::{Is, Item};
use super::pieces::atoms::{In, Out, any, det, length, lumber, one, part, sense, sep, text};
use super::sense::{Ask, Cue, Op, Part, Sense, Unit};
use crate::job::SlotId;
use crate::measure::{Guess, Length, Lumber, Meaning, Measure, Number, Q, Said, Side};
use crate::sums::{Expr, Into, Sum};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{map_opt, not, opt, peek, value, verify};
use nom::multi::{many0, many0_count};
use nom::sequence::{delimited, preceded, terminated};

/// What a loose dash read as a joiner costs: as much as the cut that reads it as a minus.
const LOOSE: u32 = 4;

/// The readings of a line as one sum; none when it is not.
pub fn sums(items: &[Item], effort: &Effort) -> Vec<Reading> {
    let watch = Watch::new(effort);
    let start = items.iter().position(|i| !is_lead(i)).unwrap_or(items.len());
    let starts = [0, start];
    let forms: [fn(In<'_>) -> Out<'_, Sum>; 9] =
        [pieces, pieces_of, sticks, convert, how_many_in, diagonal, bigger, what_is_left, worked];
    let mut out: Vec<Reading> = Vec::new();
    for start in starts {
        for form in forms {
            let Ok((rest, sum)) = form(Ahead::watched(&items[start..], &watch)) else { continue };
            let end = items.len() - rest.len();
            if items[end..].iter().all(is_trail) && !out.iter().any(|r| r.clauses == [Clause::Sum(sum.clone())]) {
                out.push(reading(items, start, end, sum));
            }
        }
    }
    out
}

fn reading(items: &[Item], start: usize, end: usize, sum: Sum) -> Reading {
    let idle = items[..start].iter().chain(&items[end..]);
    let left = idle
        .filter(|i| !i.is_sep() && !i.senses().iter().any(|s| matches!(s, Sense::Ask(_))))
        .map(|i| Left { words: i.words.clone(), weight: Weight::Light });
    let said = &items[start..end];
    let unknown = said.iter().filter(|i| i.is == Is::Unknown);
    let left = unknown.map(|i| Left { words: i.words.clone(), weight: Weight::Unknown }).chain(left).collect();
    // "12' + 3' - 4\"": beside an operator a loose dash takes off as likely as it joins.
    let signs = said.iter().any(|i| i.may_be(Sense::Op(Op::Plus)) || i.may_be(Sense::Op(Op::Less)));
    let loose = if signs { u32::try_from(said.iter().filter(|i| i.loose).count()).unwrap_or(0) } else { 0 };
    let guesses = items[start..end].iter().filter(|i| matches!(&i.is, Is::Measure(m) if m.guess.is_some())).count();
    let cost = 8 + u32::try_from(guesses).unwrap_or(0) + loose * LOOSE;
    Reading {
        clauses: vec![Clause::Sum(sum)],
        corrects: false,
        denies: false,
        trails: false,
        supposes: false,
        left,
        near: Vec::new(),
        heard: Vec::new(),
        cost,
        clash: None,
    }
}

fn is_lead(item: &Item) -> bool {
    let asks = [Ask::What, Ask::HowMuch, Ask::HowLong, Ask::Show, Ask::Where];
    item.is_sep()
        || item.is_light() && !item.senses().iter().any(|s| matches!(s, Sense::Op(Op::Half | Op::Quarter | Op::Third)))
        || item.senses().iter().any(|s| matches!(s, Sense::Ask(a) if asks.contains(a)))
}

fn is_trail(item: &Item) -> bool {
    item.is_sep()
        || item.is_light() && !item.may_be(Sense::Not) && !item.may_be(Sense::Op(Op::Less))
        || item.may_be(Sense::Op(Op::Total))
        || item.may_be(Sense::Ask(Ask::What))
        || matches!(&*item.text, "left" | "left over" | "over" | "remaining" | "remains")
}

fn op<'a>(o: Op) -> impl Parser<In<'a>, Output = (), Error = ()> {
    sense(Sense::Op(o))
}

/// What stands in a sum: a length, or a number whose unit the sum decides.
#[derive(Clone, Debug)]
enum Amount {
    Length(Length),
    Number(Number),
    Made(Expr),
}

impl Amount {
    /// As a length: a bare number is inches.
    fn as_length(&self) -> Option<Expr> {
        match self {
            Amount::Length(l) => Some(Expr::Length(*l)),
            Amount::Number(n) => Length::from_q(n.value).map(Expr::Length),
            Amount::Made(e) => Some(e.clone()),
        }
    }

    /// As a plain number, if it can be one.
    fn as_number(&self) -> Option<Q> {
        match self {
            Amount::Number(n) => Some(n.value),
            _ => None,
        }
    }

    fn is_whole(&self) -> bool {
        matches!(self, Amount::Number(n) if n.value.is_integer() && !n.fraction && !n.plural)
    }
}

fn amount_of(m: Measure) -> Option<Amount> {
    // "about 3/4", "5 1/4 strong": no sum has a place for what is not exact.
    if m.about || m.shade.is_some() || m.guess == Some(Guess::CarriedOver) {
        return None;
    }
    match m.meaning {
        Meaning::Length(l, _) => Some(Amount::Length(l)),
        Meaning::Bare(n) => Some(Amount::Number(n)),
        Meaning::Lumber(_) | Meaning::By(..) | Meaning::Doubt(..) => None,
    }
}

fn amount(input: In<'_>) -> Out<'_, Amount> {
    preceded(opt(text(&["a", "the", "an"])), map_opt(length, amount_of)).parse(input)
}

/// A bare whole number that counts.
fn whole(input: In<'_>) -> Out<'_, Q> {
    map_opt(amount, |a| if a.is_whole() { a.as_number() } else { None }).parse(input)
}

fn just_length(input: In<'_>) -> Out<'_, Length> {
    map_opt(amount, |a| match a.as_length()? {
        Expr::Length(l) => Some(l),
        _ => None,
    })
    .parse(input)
}

/// Any word that can be what is counted: "spaces", "pickets", "risers".
fn noun(input: In<'_>) -> Out<'_, ()> {
    let listed = any(|s| match s {
        Sense::Part(
            Part::Baluster | Part::Bay | Part::Riser | Part::Post | Part::LinePost | Part::Gap | Part::Opening,
        )
        | Sense::Op(Op::Ways | Op::Pieces | Op::Stick) => Some(()),
        _ => None,
    });
    alt((listed, one(|i: &Item| matches!(i.is, Is::Unknown).then_some(())))).parse(input)
}

fn risers(input: In<'_>) -> Out<'_, ()> {
    terminated(text(&["riser", "risers"]), peek(text(&["of", "at", "@"]))).parse(input)
}

fn bay(s: Sense) -> Option<()> {
    (s == Sense::Part(Part::Bay)).then_some(())
}

// --- terms and chains ------------------------------------------------------------------------

fn term(input: In<'_>) -> Out<'_, Amount> {
    alt((bracketed, part_of, counted, product, scaled, amount)).parse(input)
}

fn boxed(a: &Amount) -> Option<Box<Expr>> {
    a.as_length().map(Box::new)
}

fn over(a: &Amount, by: Q) -> Option<Amount> {
    Some(Amount::Made(Expr::Over(boxed(a)?, Box::new(Expr::Number(by)))))
}

fn times(a: &Amount, by: Q) -> Option<Amount> {
    // Two plain whole numbers multiply to a plain number; with a unit or a fraction, to a length.
    if a.is_whole() {
        return Some(Amount::Made(Expr::Times(Box::new(Expr::Number(a.as_number()?)), Box::new(Expr::Number(by)))));
    }
    Some(Amount::Made(Expr::Times(boxed(a)?, Box::new(Expr::Number(by)))))
}

/// "half of 7/8", "a third of 12'-6", "quarter of 21-2".
fn part_of(input: In<'_>) -> Out<'_, Amount> {
    let by =
        alt((value(2, op(Op::Half)), value(3, op(Op::Third)), value(4, op(Op::Quarter)), value(2, op(Op::Middle))));
    let of = preceded(opt(text(&["a", "one", "the"])), terminated(by, many0_count(text(&["of", "the", "a"]))));
    let one_of = map_opt((of, amount), |(by, a)| over(&a, Q::from_integer(by)));
    alt((share_of, one_of)).parse(input)
}

/// "two thirds of 9 foot", "3/4 of 8'", "three quarters of a 12 footer".
fn share_of(input: In<'_>) -> Out<'_, Amount> {
    let thirds = value(3, alt((op(Op::Third), text(&["thirds", "thirds of"]))));
    let quarters = value(4, alt((op(Op::Quarter), text(&["quarters", "quarters of"]))));
    let counted = (whole, alt((thirds, quarters)), many0_count(text(&["of", "the"])));
    let counted = counted.map(|(n, by, _)| n / Q::from_integer(by));
    let below_one = |n: &Number| n.fraction && n.value < Q::from_integer(1);
    let typed = map_opt(length, move |m| match m.meaning {
        Meaning::Bare(n) if below_one(&n) && m.shade.is_none() && !m.about => Some(n.value),
        _ => None,
    });
    let typed = terminated(typed, (text(&["of"]), opt(text(&["the", "a"]))));
    // "three quarters of an inch" is a measure.
    let unit = |a: &Amount| matches!(a, Amount::Length(l) if *l == Length::inches(1) || *l == Length::inches(12));
    map_opt((alt((counted, typed)), verify(amount, move |a| !unit(a))), |(share, a)| {
        let whole = Box::new(Expr::Times(boxed(&a)?, Box::new(Expr::Number(Q::from_integer(*share.numer())))));
        Some(Amount::Made(Expr::Over(whole, Box::new(Expr::Number(Q::from_integer(*share.denom()))))))
    })
    .parse(input)
}

/// "five spaces of 3 13/16", "four bays at 55 5/8", "3 of 41".
fn counted(input: In<'_>) -> Out<'_, Amount> {
    let of = alt((
        // "4 bays at 55 5/8" tells of bays, "9 risers at 7 1/4" of stairs.
        value((), (preceded(peek(not(alt((any(bay), risers)))), noun), text(&["of", "at", "@", "x", "each"]))),
        text(&["of", "at", "@"]),
        value((), (op(Op::Times), opt(text(&["of"])))),
    ));
    let times = |n: Q, a: &Amount| {
        let amount = if a.is_whole() { Expr::Number(a.as_number()?) } else { a.as_length()? };
        Some(Amount::Made(Expr::Times(Box::new(Expr::Number(n)), Box::new(amount))))
    };
    // "three 41s": so many of that length.
    let plural = |a: &Amount| matches!(a, Amount::Number(n) if n.plural);
    let several = map_opt((whole, verify(amount, plural)), |(n, a)| {
        Some(Amount::Made(Expr::Times(Box::new(Expr::Number(n)), boxed(&a)?)))
    });
    alt((map_opt((terminated(whole, of), amount), move |(n, a)| times(n, &a)), several)).parse(input)
}

/// "(10' - 3 1/2\") / 2".
fn bracketed(input: In<'_>) -> Out<'_, Amount> {
    let inside = delimited(sep("("), chain, sep(")"));
    let by =
        alt((preceded(op(Op::Over), whole).map(|n| (n, false)), preceded(op(Op::Times), whole).map(|n| (n, true))));
    map_opt((inside, opt(by)), |(a, by)| match by {
        None => Some(a),
        Some((n, false)) => over(&a, n),
        Some((n, true)) => times(&a, n),
    })
    .parse(input)
}

/// "7 3/4 times 13 risers", "3 13/16 x 5".
fn product(input: In<'_>) -> Out<'_, Amount> {
    let by = terminated(preceded(op(Op::Times), whole), opt(noun));
    map_opt((amount, by), |(a, n)| times(&a, n)).parse(input)
}

/// "11 5/16 doubled", "double 11 5/16", "24 3/8 halved".
fn scaled(input: In<'_>) -> Out<'_, Amount> {
    let by =
        || alt((value((2, true), op(Op::Double)), value((3, true), op(Op::Triple)), value((2, false), op(Op::Halved))));
    let apply =
        |a: &Amount, (n, up): (i128, bool)| if up { times(a, Q::from_integer(n)) } else { over(a, Q::from_integer(n)) };
    let cut = opt(alt((op(Op::Split), text(&["cut", "chop", "take"]))));
    let after = map_opt((preceded(cut, amount), by()), move |(a, s)| apply(&a, s));
    let before = map_opt((by(), opt(text(&["of"])), amount), move |(s, _, a)| apply(&a, s));
    alt((after, before)).parse(input)
}

fn and(input: In<'_>) -> Out<'_, ()> {
    value((), alt((value((), (opt(sep(",")), text(&["and", "&", "n", "and then"]))), sep(",")))).parse(input)
}

/// "+", "plus", "less", "minus", "take off"; and a bare "and" where adding was said.
fn sign(input: In<'_>) -> Out<'_, bool> {
    let lead = || (opt(sep(",")), opt(text(&["and", "then", "and then"])), opt(text(&["then"])), opt(op(Op::Add)));
    let plus = value(true, preceded(lead(), op(Op::Plus)));
    let add = value(true, (opt(sep(",")), opt(text(&["and", "then", "and then"])), op(Op::Add)));
    let less = value(
        false,
        preceded(
            (opt(sep(",")), opt(text(&["and", "then", "and then"])), opt(text(&["then"]))),
            alt((op(Op::Less), sep("-"), op(Op::Take))),
        ),
    );
    alt((plus, less, add)).parse(input)
}

fn added(a: &Amount, b: &Amount, plus: bool) -> Option<Amount> {
    let (mut a, mut b) = (boxed(a)?, boxed(b)?);
    // "a 10 footer less 3 at 38": beside a length the 38 is inches.
    match (is_count(&a), is_count(&b)) {
        (true, false) => a = Box::new(of_inches(*a)?),
        (false, true) => b = Box::new(of_inches(*b)?),
        _ => {}
    }
    Some(Amount::Made(if plus { Expr::Plus(a, b) } else { Expr::Less(a, b) }))
}

/// True for two plain numbers multiplied: no length is in it.
fn is_count(e: &Expr) -> bool {
    matches!(e, Expr::Times(a, b) if matches!((&**a, &**b), (Expr::Number(_), Expr::Number(_))))
}

fn of_inches(e: Expr) -> Option<Expr> {
    match e {
        Expr::Times(n, each) => match *each {
            Expr::Number(q) => Some(Expr::Times(n, Box::new(Expr::Length(Length::from_q(q)?)))),
            each => Some(Expr::Times(n, Box::new(each))),
        },
        e => Some(e),
    }
}

/// What a chain joins to what stands before it.
struct Link<'a> {
    /// Added or taken off; `None` where a bare "and" joins it, which adds only where adding is said.
    sign: Option<bool>,
    amount: Amount,
    /// What stands behind it.
    rest: In<'a>,
}

/// The links of a chain, each read once: brackets in brackets read twice over would take twice the work for each
/// pair of them.
fn links(input: In<'_>) -> Result<Vec<Link<'_>>, nom::Err<()>> {
    let mut found: Vec<Link<'_>> = Vec::new();
    let joined = || alt((sign.map(Some), value(None, and)));
    let back = || opt((text(&["off"]), text(&["that", "it"])));
    loop {
        let rest = found.last().map_or(input, |l| l.rest);
        match (joined(), terminated(term, back())).parse(rest) {
            Ok((rest, (sign, amount))) => found.push(Link { sign, amount, rest }),
            Err(nom::Err::Error(())) => return Ok(found),
            Err(e) => return Err(e),
        }
    }
}

fn fold_links(first: &Amount, links: &[Link<'_>]) -> Option<Amount> {
    links.iter().try_fold(first.clone(), |so_far, l| added(&so_far, &l.amount, l.sign.unwrap_or(true)))
}

fn chain(input: In<'_>) -> Out<'_, Amount> {
    alt((listed, joined)).parse(input)
}

/// "add up 3 and 4".
fn listed(input: In<'_>) -> Out<'_, Amount> {
    let lead = (op(Op::Add), many0_count(text(&["up", "of", "the"])));
    let (input, first) = preceded(lead, term).parse(input)?;
    let links = links(input)?;
    let made = links.last().and_then(|last| Some((last.rest, fold_links(&first, &links)?)));
    made.ok_or(nom::Err::Error(()))
}

/// "3 and 4 total", "4 at 3 7/8 and 5 at 1 1/2", "12' - 4".
fn joined(start: In<'_>) -> Out<'_, Amount> {
    let (input, first) = term(start)?;
    let links = links(input)?;
    let end = links.last().map_or(input, |l| l.rest);
    if let (Ok((rest, ())), Some(made)) = (total(end), fold_links(&first, &links)) {
        return Ok((rest, made));
    }
    // "4 at 3 7/8 and 5 at 1 1/2": what is counted is added up.
    let counts = many0(alt((sign, value(true, and))).and(counted));
    let counts = verify((counted, counts), |(_, more)| !more.is_empty());
    if let Ok(made) = map_opt(counts, |(first, steps)| fold(first, steps)).parse(start) {
        return Ok(made);
    }
    let signed = links.iter().take_while(|l| l.sign.is_some()).count();
    let signed = links.get(..signed).unwrap_or_default();
    let made = signed.last().and_then(|last| Some((last.rest, fold_links(&first, signed)?)));
    made.ok_or(nom::Err::Error(()))
}

/// "total", "what is that in total".
fn total(input: In<'_>) -> Out<'_, ()> {
    let asked =
        (opt(sense(Sense::Ask(Ask::What))), many0_count(text(&["that", "is", "it", "does", "come", "to", "in"])));
    preceded((opt(sep(",")), asked), op(Op::Total)).parse(input)
}

/// "12' minus 7 inches, then divide by 2": the whole of it, when that is said.
fn chain_split(input: In<'_>) -> Out<'_, Amount> {
    let then = (opt(sep(",")), opt(text(&["and", "all"])), opt(text(&["then", "and then"])));
    let by = (op(Op::Split), opt(text(&["it", "that", "all"])), opt(alt((op(Op::Into), text(&["by", "in", "into"])))));
    let halved = value(Q::from_integer(2), (then, op(Op::Halved)));
    let then = (opt(sep(",")), opt(text(&["and", "all"])), opt(text(&["then", "and then"])));
    let split = preceded((then, by), terminated(whole, opt(alt((op(Op::Ways), noun)))));
    map_opt((chain, alt((split, halved))), |(a, n)| over(&a, n)).parse(input)
}

/// "what's left of a 12 footer after three 41s".
fn what_is_left(input: In<'_>) -> Out<'_, Sum> {
    let lead = || {
        let left = text(&["left", "left over", "left of", "remaining", "remains", "leftover"]);
        (many0_count(text(&["is", "'s"])), left, opt(text(&["of", "off", "from", "over from", "out of", "on"])))
    };
    let less = alt((
        value(
            (),
            (
                text(&["after", "when", "if"]),
                many0_count(text(&["i", "you", "we", "cut", "take", "taking", "cutting"])),
            ),
        ),
        op(Op::Less),
    ));
    let less = (opt(sep(",")), less, opt(text(&["off", "out"])));
    let off = || alt((counted, amount));
    let less_first = (
        text(&["after", "when", "if"]),
        many0_count(text(&["i", "you", "we", "cut", "take", "taking", "cutting", "get"])),
    );
    let from = text(&["from", "out of", "off", "off of", "from one", "out of one"]);
    let stick_first = (preceded(lead(), stick), preceded(less, off()));
    let off_first = (preceded((lead(), less_first), off()), preceded(from, stick)).map(|(off, from)| (from, off));
    map_opt(alt((stick_first, off_first)), |(from, off)| {
        Some(Sum::Value(Expr::Less(Box::new(Expr::Length(from)), Box::new(of_inches(*boxed(&off)?)?))))
    })
    .parse(input)
}

fn fold(first: Amount, steps: Vec<(bool, Amount)>) -> Option<Amount> {
    steps.iter().try_fold(first, |so_far, (plus, next)| added(&so_far, next, *plus))
}

/// "take 3/8 off 40 1/4", "5 off 9-7 1/4", "3/8 from 40".
fn take(input: In<'_>) -> Out<'_, Amount> {
    let off = alt((op(Op::Off), text(&["off", "from", "off of", "out of", "away from"])));
    let mut flipped = preceded(opt(op(Op::Take)), (terminated(term, off), opt(text(&["of", "the"])), term));
    let (rest, (a, _, b)) = flipped.parse(input)?;
    match added(&b, &a, false) {
        Some(made) => Ok((rest, made)),
        None => Err(nom::Err::Error(())),
    }
}

/// "29 1/2 into 13 spaces", "split 14-6 five ways", "12'-6 divided by 3", "91 over 4".
fn split(input: In<'_>) -> Out<'_, Amount> {
    let into = || alt((op(Op::Over), op(Op::Into), text(&["by", "into", "in"])));
    let verb = || (op(Op::Split), opt(text(&["up", "the"])));
    let by_verb = value((), (op(Op::Split), opt(text(&["in", "by", "into"]))));
    let told = preceded(verb(), (amount, preceded(opt(into()), whole), opt(alt((op(Op::Ways), noun)))));
    let ways = (amount, preceded((opt(by_verb), opt(text(&["in", "into"]))), whole), map(op(Op::Ways)));
    let by =
        alt((op(Op::Over), op(Op::Into), value((), (op(Op::Split), alt((op(Op::Into), text(&["in", "by", "into"])))))));
    let plain = (amount, preceded(by, whole), opt(alt((op(Op::Ways), noun))));
    let split = alt((pair(told), pair(ways), pair(plain)));
    map_opt(split, |(a, n)| over(&a, n)).parse(input)
}

fn map<'a>(p: impl Parser<In<'a>, Output = (), Error = ()>) -> impl Parser<In<'a>, Output = Option<()>, Error = ()> {
    p.map(Some)
}

fn pair<'a, T>(
    p: impl Parser<In<'a>, Output = (Amount, Q, T), Error = ()>,
) -> impl Parser<In<'a>, Output = (Amount, Q), Error = ()> {
    p.map(|(a, n, _)| (a, n))
}

/// "difference between 40 1/4 and 38 5/8".
fn difference(input: In<'_>) -> Out<'_, Amount> {
    let pair = preceded(
        (opt(text(&["the"])), op(Op::Difference), opt(text(&["between", "from", "of"]))),
        (just_length, preceded(alt((and, text(&["to", "from"]))), just_length)),
    );
    // "how much over 6 foot is 74 3/8", "how far under 36 is 35 1/4".
    let over = (
        alt((sense(Sense::Ask(Ask::HowMuch)), sense(Sense::Ask(Ask::HowFar)))),
        alt((
            text(&[
                "over",
                "under",
                "past",
                "more than",
                "less than",
                "short of",
                "longer than",
                "shorter than",
                "bigger than",
            ]),
            sense(Sense::Cue(Cue::Most)),
            sense(Sense::Cue(Cue::Under)),
        )),
    );
    let over = (preceded(over, just_length), preceded(text(&["is", "'s"]), just_length));
    alt((pair, over))
        .map(|(a, b)| Amount::Made(Expr::Less(Box::new(Expr::Length(a.max(b))), Box::new(Expr::Length(a.min(b))))))
        .parse(input)
}

fn worked(input: In<'_>) -> Out<'_, Sum> {
    let lone = verify(alt((bracketed, part_of, counted, product, scaled)), |a| matches!(a, Amount::Made(_)));
    map_opt(alt((difference, chain_split, take, split, chain, lone)), |a| a.as_length().map(Sum::Value)).parse(input)
}

// --- whole forms -------------------------------------------------------------------------------

/// A stick to cut from: "a 16 footer", "a 12 foot 2x2", "an 8 ft stick".
fn stick(input: In<'_>) -> Out<'_, Length> {
    let stock = |m: Measure| match m.meaning {
        Meaning::Length(l, _) => Some(l),
        Meaning::Bare(n) => SlotId::RunLength.bare(n).first().copied(),
        _ => None,
    };
    let lead = many0_count(text(&["a", "an", "the", "one", "each", "of", "full"]));
    delimited(lead, map_opt(length, stock), (opt(lumber), many0_count(alt((op(Op::Stick), noun, text(&["long"]))))))
        .parse(input)
}

fn out_of(input: In<'_>) -> Out<'_, ()> {
    let words =
        many0_count(text(&["can", "i", "do", "will", "you", "we", "get", "cut", "come", "would", "could", "to"]));
    value((), (words, alt((op(Op::OutOf), op(Op::Off))), opt(text(&["of"])))).parse(input)
}

/// "how many 38s come out of a 16 footer".
fn pieces(input: In<'_>) -> Out<'_, Sum> {
    let piece = preceded(
        (sense(Sense::Ask(Ask::HowMany)), opt(text(&["pieces of", "of"]))),
        terminated(
            just_length,
            many0_count(alt((noun, sense(Sense::Cue(Cue::Long)), sense(Sense::Unit(Unit::Inches))))),
        ),
    );
    let first = (terminated(piece, out_of), stick).map(|(piece, from)| Sum::Pieces { piece, from });
    // "out of a 16 footer how many 38s".
    let out =
        preceded((text(&["out of", "from", "off", "with"]), opt(text(&["of"]))), terminated(stick, opt(sep(","))));
    let asked = preceded((sense(Sense::Ask(Ask::HowMany)), opt(text(&["of"]))), just_length);
    // "how many spaces at 5 1/2 in 118".
    let at = alt((sense(Sense::Part(Part::Gap)), text(&["spaces", "of them", "times", "pieces"])));
    let spaced = (sense(Sense::Ask(Ask::HowMany)), at, text(&["at", "of", "@", "does"]));
    let spaced = preceded(spaced, just_length);
    let within = preceded(
        (text(&["in", "into", "over", "fit in", "across", "out of", "go into", "go in"]), opt(text(&["a"]))),
        just_length,
    );
    let spaced = (spaced, within).map(|(piece, from)| Sum::Pieces { piece, from });
    alt((first, spaced, (out, asked).map(|(from, piece)| Sum::Pieces { piece, from }))).parse(input)
}

/// "pickets are 34 long, how many out of a 12 foot 2x2".
fn pieces_of(input: In<'_>) -> Out<'_, Sum> {
    let said = (det, noun, many0_count(text(&["is", "are", "at", "'s", "cut", "need", "to", "be"])));
    let piece = delimited(said, just_length, (opt(sense(Sense::Cue(Cue::Long))), opt(text(&["each"])), opt(sep(",."))));
    let asked = (opt(text(&["and", "so"])), sense(Sense::Ask(Ask::HowMany)), opt(noun), out_of);
    (terminated(piece, asked), stick).map(|(piece, from)| Sum::Pieces { piece, from }).parse(input)
}

/// "62 pickets, 4 to a stick, how many sticks".
fn sticks(input: In<'_>) -> Out<'_, Sum> {
    let many = terminated(whole, (noun, opt(sep(",")), opt(text(&["at", "and"]))));
    let per = terminated(
        whole,
        (
            opt(noun),
            alt((
                op(Op::Stick),
                value(
                    (),
                    (text(&["to", "per", "a", "from", "out of", "each"]), opt(text(&["a", "each"])), op(Op::Stick)),
                ),
            )),
        ),
    );
    let asked = (opt(sep(",")), sense(Sense::Ask(Ask::HowMany)), alt((op(Op::Stick), noun)));
    map_opt(terminated((many, per), opt(asked)), |(pieces, per)| {
        let (pieces, per) = (u64::try_from(pieces.to_integer()).ok()?, u64::try_from(per.to_integer()).ok()?);
        (per > 0).then_some(Sum::Sticks { pieces, per })
    })
    .parse(input)
}

fn unit(input: In<'_>) -> Out<'_, Into> {
    any(|s| match s {
        Sense::Unit(Unit::Inches) => Some(Into::Inches),
        Sense::Unit(Unit::Feet) => Some(Into::FeetInches),
        Sense::Unit(Unit::Millimetres) => Some(Into::Millimetres),
        Sense::Unit(Unit::Centimetres) => Some(Into::Centimetres),
        Sense::Unit(Unit::Metres) => Some(Into::Metres),
        _ => None,
    })
    .parse(input)
}

fn in_unit(input: In<'_>) -> Out<'_, Into> {
    let and_inches = (text(&["and", "&", "n"]), sense(Sense::Unit(Unit::Inches)));
    let decimal = value(Into::Feet, (text(&["decimal"]), sense(Sense::Unit(Unit::Feet))));
    preceded(text(&["in", "to", "into", "as", "is", "how many"]), alt((decimal, terminated(unit, opt(and_inches)))))
        .parse(input)
}

/// "150 mm in inches", "convert 3200 mm to feet".
fn convert(input: In<'_>) -> Out<'_, Sum> {
    let asked = || many0_count(text(&["what", "is", "'s", "how", "much"]));
    let lead = (asked(), opt(op(Op::Convert)), asked());
    (preceded(lead, just_length), preceded(opt(text(&["is", "is that", "that"])), in_unit))
        .map(|(l, into)| Sum::Convert(l, into))
        .parse(input)
}

/// "how many inches in 17 foot 3", "how many mm is 4 3/8".
fn how_many_in(input: In<'_>) -> Out<'_, Sum> {
    let asked = preceded(
        sense(Sense::Ask(Ask::HowMany)),
        terminated(unit, many0_count(text(&["in", "is", "are", "there", "to", "'s", "a", "make", "of"]))),
    );
    (asked, just_length).map(|(into, l)| Sum::Convert(l, into)).parse(input)
}

fn side_length(s: Side, fellow: Side) -> Option<Length> {
    match (s, fellow) {
        (Side::Length(l, _), _) => Some(l),
        // Beside a length in inches a bare number is inches; else a deck's side.
        (Side::Bare(n), Side::Length(_, Said::Inches)) => Length::from_q(n.value),
        (Side::Bare(n), _) => SlotId::DeckSide.bare(n).first().copied(),
    }
}

fn two_sides(input: In<'_>) -> Out<'_, (Length, Length)> {
    let by = one(|i: &Item| match &i.is {
        // "14x20 minus": a mark that is not met has no place here.
        Is::Measure(Measure { meaning: Meaning::By(a, b), shade: None, about: false, .. }) => {
            Some((side_length(*a, *b)?, side_length(*b, *a)?))
        }
        Is::Measure(Measure { meaning: Meaning::Lumber(Lumber { thick_quarters, wide }), .. })
            if thick_quarters % 4 == 0 =>
        {
            Some((Length::inches(i64::from(*thick_quarters) * 3), Length::inches(i64::from(*wide) * 12)))
        }
        _ => None,
    });
    let apart = map_opt((length, preceded(text(&["by", "x", "and"]), length)), |(a, b)| {
        let (a, b) = (as_side(&a)?, as_side(&b)?);
        Some((side_length(a, b)?, side_length(b, a)?))
    });
    alt((by, apart)).parse(input)
}

fn as_side(m: &Measure) -> Option<Side> {
    match m.meaning {
        Meaning::Bare(n) => Some(Side::Bare(n)),
        Meaning::Length(l, said) => Some(Side::Length(l, said)),
        _ => None,
    }
}

/// "check diagonal for 10 by 14", "10 by 14 diagonal".
fn diagonal(input: In<'_>) -> Out<'_, Sum> {
    let of = many0_count(alt((text(&["of", "for", "on", "a", "the", "is", "to", "in", "be", "an"]), part(Part::Deck))));
    let before = preceded(
        (many0_count(text(&["the", "check", "a", "should", "would", "should be"])), op(Op::Diagonal), of),
        terminated(
            two_sides,
            (opt(part(Part::Deck)), many0_count(text(&["to", "square", "it", "up", "for", "check", "if", "its"]))),
        ),
    );
    let after = terminated(
        two_sides,
        (
            opt(part(Part::Deck)),
            many0_count(text(&["what", "'s", "is", "the"])),
            op(Op::Diagonal),
            many0_count(text(&["for", "square", "to", "check", "it", "up", "if", "its"])),
        ),
    );
    alt((before, after)).map(|(a, b)| Sum::Diagonal(a, b)).parse(input)
}

/// "which is bigger 19/32 or 5/8", "is 19/32 bigger than 5/8".
fn bigger(input: In<'_>) -> Out<'_, Sum> {
    let word = || alt((op(Op::Bigger), op(Op::Smaller)));
    let which = opt((sense(Sense::Ask(Ask::Which)), many0_count(text(&["is", "one", "'s", "of"]))));
    let asked = (which, word(), opt(sep(",:-")));
    let which = preceded(asked, (just_length, preceded(alt((text(&["or", "and", "vs"]), sep(","))), just_length)));
    let than = preceded(
        text(&["is"]),
        (just_length, preceded((opt(text(&["is"])), word(), text(&["than", "or"])), just_length)),
    );
    let said = text(&["less than", "more than", "under", "over", "bigger than", "smaller than", "longer than"]);
    let is_than = preceded(text(&["is"]), (just_length, preceded(said, just_length)));
    alt((which, than, is_than)).map(|(a, b)| Sum::Bigger(a, b)).parse(input)
}
