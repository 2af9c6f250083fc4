//! PDF 1.7 with its type face inside; text stays text.

use super::super::page::{Ink, Page, Shape};
use super::super::type_face::{BOLD, PLAIN, face, sign, width, width_of};
use super::small;
use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Content, Finish, Name, Pdf, Rect, Ref, Str, TextStr};
use std::collections::BTreeMap;

const IDENTITY: SystemInfo = SystemInfo { registry: Str(b"Adobe"), ordering: Str(b"Identity"), supplement: 0 };
const NAMES: [Name<'static>; 2] = [Name(b"Plain"), Name(b"Heavy")];

/// Numbers for the file's objects, given out in order.
struct Refs(i32);

impl Refs {
    fn next(&mut self) -> Ref {
        self.0 += 1;
        Ref::new(self.0)
    }
}

/// The pages as one file.
pub fn pdf(pages: &[Page]) -> Vec<u8> {
    let mut refs = Refs(0);
    let mut pdf = Pdf::new();
    let (catalog, tree, info) = (refs.next(), refs.next(), refs.next());
    let fonts = [refs.next(), refs.next()];
    let ids: Vec<(Ref, Ref)> = pages.iter().map(|_| (refs.next(), refs.next())).collect();
    pdf.catalog(catalog).pages(tree).lang(TextStr("en"));
    pdf.document_info(info).title(TextStr("Guard: layout, cuts and checks")).creator(TextStr("railhand"));
    let count = i32::try_from(pages.len()).unwrap_or(i32::MAX);
    pdf.pages(tree).kids(ids.iter().map(|(page, _)| *page)).count(count);
    for (page, (id, content)) in pages.iter().zip(&ids) {
        let mut set = pdf.page(*id);
        set.media_box(Rect::new(0.0, 0.0, small(page.width), small(page.height))).parent(tree).contents(*content);
        let mut resources = set.resources();
        let mut named = resources.fonts();
        for (name, font) in NAMES.iter().zip(fonts) {
            named.pair(*name, font);
        }
        named.finish();
        resources.finish();
        set.finish();
        pdf.stream(*content, &drawn(page));
    }
    for (bold, font) in [false, true].into_iter().zip(fonts) {
        embed(&mut pdf, &mut refs, font, bold, pages);
    }
    pdf.finish()
}

fn grey(ink: Ink) -> Option<f32> {
    match ink {
        Ink::None => None,
        Ink::White => Some(1.0),
        Ink::Pale => Some(0.902),
        Ink::Grey => Some(0.604),
        Ink::Black => Some(0.0),
    }
}

fn drawn(page: &Page) -> Vec<u8> {
    let mut content = Content::new();
    let up = |y: f64| small(page.height - y);
    for shape in &page.shapes {
        match shape {
            Shape::Line { from, to, thick, dashed } => {
                content.save_state();
                if *dashed {
                    content.set_dash_pattern([3.0, 2.0], 0.0);
                }
                content.set_line_width(small(*thick));
                content.move_to(small(from.0), up(from.1)).line_to(small(to.0), up(to.1)).stroke();
                content.restore_state();
            }
            Shape::Area { corners, fill, thick } => {
                let Some((first, rest)) = corners.split_first() else { continue };
                content.move_to(small(first.0), up(first.1));
                for corner in rest {
                    content.line_to(small(corner.0), up(corner.1));
                }
                content.close_path();
                let filled = grey(*fill).map(|g| content.set_fill_gray(g)).is_some();
                content.set_line_width(small(*thick));
                match (filled, *thick > 0.0) {
                    (true, true) => content.fill_nonzero_and_stroke(),
                    (true, false) => content.fill_nonzero(),
                    (false, true) => content.stroke(),
                    (false, false) => content.end_path(),
                };
                content.set_fill_gray(0.0);
            }
            Shape::Text { at, size, bold, anchor, upright, words, .. } => {
                let long = width(words, *size, *bold);
                let back = anchor.back(long);
                let bytes: Vec<u8> = words.chars().flat_map(|c| sign(*bold, c).0.to_be_bytes()).collect();
                content.begin_text().set_font(NAMES[usize::from(*bold)], small(*size));
                if *upright {
                    content.set_text_matrix([0.0, 1.0, -1.0, 0.0, small(at.0), up(at.1 + back)]);
                } else {
                    content.set_text_matrix([1.0, 0.0, 0.0, 1.0, small(at.0 - back), up(at.1)]);
                }
                content.show(Str(&bytes)).end_text();
            }
        }
    }
    content.finish().into_vec()
}

/// A face as a font of glyph numbers, with the characters each stands for, so that text can be copied.
fn embed(pdf: &mut Pdf, refs: &mut Refs, font: Ref, bold: bool, pages: &[Page]) {
    let (cid, descriptor, data, cmap) = (refs.next(), refs.next(), refs.next(), refs.next());
    let name = if bold { Name(b"DejaVuSans-Bold") } else { Name(b"DejaVuSans") };
    let mut signs: BTreeMap<u16, char> = BTreeMap::new();
    for shape in pages.iter().flat_map(|p| &p.shapes) {
        if let Shape::Text { words, bold: b, .. } = shape
            && *b == bold
        {
            signs.extend(words.chars().map(|c| (sign(bold, c).0, c)));
        }
    }
    pdf.type0_font(font).base_font(name).encoding_predefined(Name(b"Identity-H")).descendant_font(cid).to_unicode(cmap);
    let mut set = pdf.cid_font(cid);
    set.subtype(CidFontType::Type2).base_font(name).system_info(IDENTITY).font_descriptor(descriptor);
    set.default_width(600.0).cid_to_gid_map_predefined(Name(b"Identity"));
    let mut widths = set.widths();
    for (glyph, c) in &signs {
        widths.consecutive(*glyph, [small(width_of(bold, *c) * 1000.0)]);
    }
    widths.finish();
    set.finish();
    let em = face(bold).map_or(2048.0, |f| f32::from(f.units_per_em()));
    let parts = |n: i16| f32::from(n) * 1000.0 / em;
    let (up, down) = face(bold).map_or((900.0, -200.0), |f| (parts(f.ascender()), parts(f.descender())));
    let mut about = pdf.font_descriptor(descriptor);
    about.name(name).flags(FontFlags::NON_SYMBOLIC).bbox(Rect::new(-1000.0, down, 2000.0, up));
    about.italic_angle(0.0).ascent(up).descent(down).cap_height(730.0).stem_v(if bold { 140.0 } else { 80.0 });
    about.font_file2(data);
    about.finish();
    pdf.stream(data, if bold { BOLD } else { PLAIN });
    let mut map = UnicodeCmap::new(Name(b"Signs"), IDENTITY);
    signs.iter().for_each(|(glyph, c)| map.pair(*glyph, *c));
    pdf.cmap(cmap, &map.finish());
}
