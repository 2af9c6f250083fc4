//! The sheet and the notes: everything in its place, to scale, and the same figures as the answers.

use pretty_assertions::assert_eq;
use railhand::job::{Job, retold};
use railhand::layout::lay_out;
use railhand::measure::{Length, Tape, exact_fraction};
use railhand::paper::{
    Anchor, Block, Document, Figure, Form, Page, Paper, Shape, lines_to_take, markdown, text_width, typeset, write,
};
use railhand::reply::Status;
use railhand::session::{Session, step};
use std::borrow::Cow;
use std::collections::BTreeSet;

fn told(lines: &[&str]) -> Job {
    let mut session = Session::new();
    for line in lines {
        let (delta, reply) = step(&session, line);
        assert_eq!(reply.status, Status::Told, "{line}");
        session.apply(delta);
    }
    session.job().clone()
}

/// Ten decks of our own, from one run to twenty.
fn decks() -> Vec<(&'static str, Job)> {
    let twenty: Vec<String> = (0..20).map(|n| format!("run {} ft corner to corner", 8 + n)).collect();
    let twenty: Vec<&str> = twenty.iter().map(String::as_str).collect();
    let usual = ["36 high, gap under 3", "overhang 0, skirt 3/4, rim 2x10", "balusters between the rails", "no cap"];
    let with = |lines: &[&str]| told(&[lines, &usual[..]].concat());
    vec![
        ("one run", told(&["run 10 ft house to corner"])),
        ("a short run", with(&["run 30 in wall to corner"])),
        ("a long run", with(&["run 62 ft corner to corner"])),
        (
            "two runs and a gate",
            with(&["front 16 ft corner to corner", "creek side 12 ft corner to house, 36 inch gate in the middle"]),
        ),
        ("three sides", with(&["u shape, 12 16 12"])),
        (
            "stairs",
            with(&[
                "front 16 ft corner to corner",
                "stairs 4 ft wide in the middle of the front",
                "7 risers 7 1/2 on 10, open both sides",
            ]),
        ),
        ("a tall flight", with(&["run 8 ft house to stair head", "14 risers 7 1/2 on 10, open both sides"])),
        ("posts close together", with(&["run 9 ft corner to corner", "8 bays"])),
        ("big posts", with(&["run 14 ft corner to corner", "6x6 posts"])),
        ("twenty runs", with(&twenty)),
        ("a deck with a bump", with(&["out 12, across 8, out 4, across 6, back 4, across 10, then home"])),
        (
            "stairs and a gate off a deck",
            with(&[
                "deck 16 along the house, 12 out",
                "stairs off the left, 4 ft, tight to the house",
                "gate on the left",
            ]),
        ),
    ]
}

/// The outline of the whole deck: each side as long as it was told or follows, times the scale, and the outline ends at
/// the house where it began.
#[test]
fn the_whole_deck_is_drawn_to_scale() {
    let sides: &[(&str, &[i64])] = &[
        ("three sides", &[12, 16, 12]),
        ("a deck with a bump", &[12, 8, 4, 6, 4, 10, 12]),
        ("stairs and a gate off a deck", &[12, 16, 12]),
    ];
    for (name, job) in decks() {
        let plan = figures(&job).into_iter().find(|f| f.title == "The whole deck");
        let want = sides.iter().find(|(n, _)| *n == name).map(|(_, feet)| *feet);
        assert_eq!(plan.is_some(), want.is_some(), "{name}");
        let Some((plan, feet)) = plan.zip(want) else { continue };
        let Some(Shape::Area { corners, .. }) = plan.shapes.first() else { panic!("{name}: no outline") };
        let scale = f64::from(plan.scale.expect("a plan is to scale"));
        let long = |w: &[(f64, f64)]| (w[1].0 - w[0].0).hypot(w[1].1 - w[0].1) / 72.0 * scale / 12.0;
        let drawn: Vec<f64> = corners.windows(2).map(long).collect();
        assert_eq!(drawn.len(), feet.len(), "{name}");
        for (drawn, feet) in drawn.iter().zip(feet) {
            assert!(
                (drawn - f64::from(i32::try_from(*feet).expect("small"))).abs() < 1e-6,
                "{name}: {drawn} ft for {feet}"
            );
        }
        // Standing at the house and looking out is looking up the page: the walk ends as low as it began.
        let (first, last) = (corners[0], corners[corners.len() - 1]);
        assert!((first.1 - last.1).abs() < 1e-6 && first.0 < last.0, "{name}: {first:?} {last:?}");
        assert!(corners[1].1 < first.1, "{name}: the first side goes out, up the page");
    }
}

/// Stairs of untold rise keep back five answers; what they lack is asked once.
#[test]
fn what_is_open_is_asked_once() {
    for (name, job) in decks() {
        let document = Document::of(&job);
        let open = document.parts.iter().find(|p| p.heading == "Still open").map_or(&[][..], |p| &p.blocks[..]);
        let rows: Vec<&String> =
            open.iter().filter_map(|b| if let Block::Row(t) = b { Some(t) } else { None }).collect();
        assert_eq!(rows.len(), rows.iter().collect::<BTreeSet<_>>().len(), "{name}: {rows:?}");
    }
}

/// The gate's drawing: opening and leaf as the answer gives them, to scale. 42 in. less 1/2 and 1/2 is 41.
#[test]
fn a_gate_is_drawn_as_it_is_cut() {
    let job =
        told(&["front 16 ft corner to corner, 42 inch gate in the middle", "36 high, gap under 3", "1 1/2 balusters"]);
    let drawn = figures(&job).into_iter().find(|f| f.title == "The gate from outside").expect("a gate");
    let scale = f64::from(drawn.scale.expect("to scale"));
    let inches = |points: f64| points / 72.0 * scale;
    let told: Vec<(String, String)> = drawn
        .shapes
        .iter()
        .filter_map(|s| match s {
            Shape::Text { words, inches: Some(exact), .. } => Some((words.clone(), exact.clone())),
            _ => None,
        })
        .collect();
    let want = [("3'-6\"", "42"), ("3'-5\"", "41"), ("2'-9\"", "33")].map(|(a, b)| (a.to_owned(), b.to_owned()));
    assert_eq!(told, want);
    let wide = drawn.shapes.iter().filter_map(|s| match s {
        Shape::Area { corners, .. } => Some(inches(corners[1].0 - corners[0].0)),
        _ => None,
    });
    assert!(wide.clone().any(|w| (w - 41.0).abs() < 1e-6), "no leaf of 41 in.: {:?}", wide.collect::<Vec<_>>());
}

/// Left, top, right, bottom.
type Edges = [f64; 4];

fn edges(shape: &Shape) -> Edges {
    let of = |points: &[(f64, f64)]| {
        let fold = |f: fn(f64, f64) -> f64, from, of: fn(&(f64, f64)) -> f64| points.iter().map(of).fold(from, f);
        let (low, high) = (f64::INFINITY, f64::NEG_INFINITY);
        [
            fold(f64::min, low, |p| p.0),
            fold(f64::min, low, |p| p.1),
            fold(f64::max, high, |p| p.0),
            fold(f64::max, high, |p| p.1),
        ]
    };
    match shape {
        Shape::Line { from, to, .. } => of(&[*from, *to]),
        Shape::Area { corners, .. } => of(corners),
        Shape::Text { at, size, bold, anchor, upright, words, .. } => {
            let long = text_width(words, *size, *bold);
            let back = match anchor {
                Anchor::Start => 0.0,
                Anchor::Middle => long / 2.0,
                Anchor::End => long,
            };
            let (x, y) = *at;
            if *upright {
                [x - size * 0.75, y + back - long, x, y + back]
            } else {
                [x - back, y - size * 0.75, x - back + long, y]
            }
        }
    }
}

fn pages() -> Vec<(String, Page)> {
    let set = |(name, job): (&'static str, Job)| {
        let document = Document::of(&job);
        let both = [Paper::Letter, Paper::A4].into_iter().flat_map(move |paper| typeset(&document, paper));
        both.enumerate().map(move |(n, page)| (format!("{name}, page {}", n + 1), page))
    };
    decks().into_iter().flat_map(set).collect()
}

fn figures(job: &Job) -> Vec<Figure> {
    let blocks = Document::of(job).parts.into_iter().flat_map(|p| p.blocks);
    blocks.filter_map(|b| if let Block::Figure(f) = b { Some(f) } else { None }).collect()
}

/// Printers leave a quarter inch or so at the edge (common practice, no source).
#[test]
fn nothing_runs_off_the_page() {
    let pages = pages();
    assert!(pages.len() > 60, "{} pages", pages.len());
    for (name, page) in pages {
        for shape in &page.shapes {
            let [left, top, right, bottom] = edges(shape);
            let inside = left >= 18.0 && top >= 18.0 && right <= page.width - 18.0 && bottom <= page.height - 18.0;
            assert!(inside, "{name}: {shape:?} at {:?} of {} x {}", edges(shape), page.width, page.height);
        }
    }
}

#[test]
fn no_text_stands_on_another() {
    for (name, page) in pages() {
        let texts: Vec<&Shape> = page.shapes.iter().filter(|s| matches!(s, Shape::Text { .. })).collect();
        for (k, one) in texts.iter().enumerate() {
            let a = edges(one);
            for other in &texts[..k] {
                let b = edges(other);
                let apart = a[2] <= b[0] + 0.1 || b[2] <= a[0] + 0.1 || a[3] <= b[1] + 0.1 || b[3] <= a[1] + 0.1;
                assert!(apart, "{name}: {one:?} on {other:?}");
            }
        }
    }
}

/// So many points on paper are so many inches of the job, times the scale.
#[test]
fn a_run_is_as_long_as_its_scale_says() {
    for (name, job) in decks() {
        let layout = lay_out(&job);
        let laid: Vec<_> = layout.runs.iter().filter_map(|r| r.result.as_ref().ok()).collect();
        let drawn = figures(&job);
        let runs = drawn.iter().filter(|f| {
            f.shapes.iter().any(|s| matches!(s, Shape::Text { words, .. } if words.starts_with("Above: clear")))
        });
        let runs: Vec<&Figure> = runs.collect();
        assert_eq!(runs.len(), laid.len(), "{name}");
        for (figure, placed) in runs.iter().zip(laid) {
            let level = figure.shapes.iter().filter_map(|s| match s {
                Shape::Line { from, to, .. } if from.1 == to.1 => Some(to.0 - from.0),
                _ => None,
            });
            let longest = level.fold(0.0, f64::max);
            let scale = f64::from(figure.scale.expect("a run is to scale"));
            let inches = longest / 72.0 * scale;
            assert!((inches - placed.overall.for_drawing()).abs() < 1e-6, "{name}: {inches} of {:?}", placed.overall);
        }
    }
}

/// Every dimension of a run is one of its layout, read as the tape reads it.
#[test]
fn each_dimension_is_the_layout_s() {
    let tape = Tape::SIXTEENTHS;
    for (name, job) in decks() {
        let layout = lay_out(&job);
        let mut known: BTreeSet<(String, String)> = BTreeSet::new();
        let mut know = |l: Length| known.insert((exact_fraction(l), tape.read(l)));
        for placed in layout.runs.iter().filter_map(|r| r.result.as_ref().ok()) {
            placed.bays.iter().for_each(|b| _ = know(b.clear_length()));
            placed.posts.iter().filter_map(|p| p.at.as_length()).for_each(|l| _ = know(l));
        }
        let mut told = 0;
        for figure in
            figures(&job).iter().filter(|f| f.title.starts_with("run ") || f.title == "front" || f.title == "creek")
        {
            for shape in &figure.shapes {
                if let Shape::Text { words, inches: Some(inches), .. } = shape {
                    told += 1;
                    assert!(known.contains(&(inches.clone(), words.clone())), "{name}: {inches} {words}");
                }
            }
        }
        assert!(told > 0 || name == "three sides", "{name}");
    }
}

fn pasted(notes: &str) -> Job {
    let lines: Vec<Cow<'_, str>> = notes.lines().map(Cow::Borrowed).collect();
    let lines = lines_to_take(&lines).expect("the notes are whole");
    told(&lines.iter().map(|l| &**l).collect::<Vec<_>>())
}

#[test]
fn notes_paste_back_to_the_same_job() {
    for (name, job) in decks() {
        let notes = markdown(&Document::of(&job));
        assert_eq!(retold(&pasted(&notes)), retold(&job), "{name}");
        assert_eq!(markdown(&Document::of(&pasted(&notes))), notes, "{name}");
    }
}

/// 72 columns, but for a phrase or a drawing, which may not be broken.
#[test]
fn notes_are_narrow() {
    for (name, job) in decks() {
        let notes = markdown(&Document::of(&job));
        let mut fenced = false;
        for line in notes.lines() {
            fenced ^= line.starts_with("```");
            assert!(fenced || line.chars().count() <= 72, "{name}: {line}");
        }
    }
}

#[test]
fn nothing_typed_is_markup() {
    let job = told(&["run 10 ft house to corner", "note: <script>alert(1)</script> & **b** `c` [x](http://y)"]);
    for form in [Form::Html, Form::Svg] {
        let bytes = write(&job, form, Paper::Letter).expect("it is short");
        let text = String::from_utf8(bytes).expect("it is text");
        assert!(!text.contains("<script"), "{form:?}");
        assert!(text.contains("&lt;script&gt;"), "{form:?}");
    }
    let notes = markdown(&Document::of(&job));
    let shown: Vec<&str> = notes.lines().filter(|l| l.contains("script") && !l.starts_with("note: ")).collect();
    assert!(!shown.is_empty() && shown.iter().all(|l| l.contains("\\<script\\>")), "{shown:?}");
}

/// The file's own marks: ISO 32000-1 7.5.2 for PDF, the first eight bytes of PNG (W3C PNG, 5.2), both from memory.
#[test]
fn each_form_is_what_its_ending_says() {
    let job = told(&["run 10 ft house to corner", "36 high, gap under 3"]);
    let pages = typeset(&Document::of(&job), Paper::A4).len();
    let of = |form| write(&job, form, Paper::A4).expect("it is short");
    let pdf = of(Form::Pdf);
    assert!(pdf.starts_with(b"%PDF-1.7"));
    let count = pdf.windows(b"/Type /Page\n".len()).filter(|w| *w == b"/Type /Page\n").count();
    assert_eq!(count, pages);
    assert_eq!(pdf.windows(10).filter(|w| *w == b"/FontFile2").count(), 2);
    assert!(of(Form::Png).starts_with(b"\x89PNG\r\n\x1a\n"));
    let html = String::from_utf8(of(Form::Html)).expect("it is text");
    assert_eq!(html.matches("<div class=\"page\">").count(), pages);
    assert!(
        !html.contains("http://")
            || html.matches("http://").count() == html.matches("http://www.w3.org/2000/svg").count()
    );
    assert!(String::from_utf8(of(Form::Svg)).expect("it is text").starts_with("<svg "));
    assert!(of(Form::Md).starts_with(b"# Guard layout notes"));
}

/// 210 x 297 mm (ISO 216) in points of 1/72 in.
#[test]
fn a4_is_a4() {
    let (width, height) = Paper::A4.size();
    assert!((width - 595.28).abs() < 0.01 && (height - 841.89).abs() < 0.01);
}
