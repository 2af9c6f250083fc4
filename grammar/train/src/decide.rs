//! How likely the binder's best candidate is what was meant: a logistic for each kind of act over what the program wrote down of lines whose
//! scores had not seen them (`src/session/bind/compared.rs`).

use std::collections::BTreeMap;

/// What one line's best candidate rests on, and whether it was what the line's labels mean.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// The kind of act.
    pub kind: String,
    /// It was meant.
    pub right: bool,
    /// What its odds rest on.
    pub features: Vec<f64>,
}

/// How hard weights are held to nothing, on features of one spread.
const HELD: f64 = 1.0;

/// Newton's method comes to rest long before.
const ROUNDS: usize = 30;

/// Rows as the program writes them: kind, rank of what was meant or "none", whether that is known, odds, features, line and phrases. A line
/// that stands in them twice counts once.
///
/// # Errors
/// A row of another form, by its number.
pub fn parse(text: &str) -> Result<Vec<Seen>, String> {
    let mut rows = BTreeMap::new();
    for (n, row) in text.lines().enumerate() {
        let wrong = || format!("{}: not a row of a comparison", n + 1);
        let [kind, rank, _, _, features, line, ..] = row.split('\t').collect::<Vec<_>>()[..] else {
            return Err(wrong());
        };
        let numbers = features.split(' ').map(str::parse).collect::<Result<Vec<f64>, _>>().map_err(|_| wrong())?;
        let seen = Seen { kind: kind.to_owned(), right: rank == "0", features: numbers };
        rows.insert((line, features), seen);
    }
    Ok(rows.into_values().collect())
}

/// The weights of each kind: one for all, then one a feature.
pub fn fitted(all: &[Seen]) -> BTreeMap<String, Vec<f64>> {
    let mut kinds: BTreeMap<&str, Vec<&Seen>> = BTreeMap::new();
    all.iter().for_each(|s| kinds.entry(&s.kind).or_default().push(s));
    kinds.into_iter().map(|(kind, some)| (kind.to_owned(), logistic(&some))).collect()
}

/// The probability that weights give a row.
pub fn odds(weights: &[f64], features: &[f64]) -> f64 {
    let sum: f64 = weights[0] + weights[1..].iter().zip(features).map(|(w, f)| w * f).sum::<f64>();
    1.0 / (1.0 + (-sum).exp())
}

/// Logistic regression by Newton's method, on features of one spread; the weights are for the features as they are.
fn logistic(some: &[&Seen]) -> Vec<f64> {
    let n = some.first().map_or(0, |s| s.features.len());
    let count = some.len() as f64;
    let mean: Vec<f64> = (0..n).map(|i| some.iter().map(|s| s.features[i]).sum::<f64>() / count).collect();
    let spread = |i: usize| (some.iter().map(|s| (s.features[i] - mean[i]).powi(2)).sum::<f64>() / count).sqrt();
    // What is always the same says nothing.
    let scale: Vec<f64> = (0..n).map(spread).map(|s| if s > 1e-6 { 1.0 / s } else { 0.0 }).collect();
    let row = |s: &&Seen| [1.0].into_iter().chain((0..n).map(|i| (s.features[i] - mean[i]) * scale[i])).collect();
    let rows: Vec<Vec<f64>> = some.iter().map(row).collect();
    let mut weights = vec![0.0; n + 1];
    for _ in 0..ROUNDS {
        let step = newton(&rows, some, &weights);
        weights.iter_mut().zip(&step).for_each(|(w, s)| *w += s);
    }
    let mut raw: Vec<f64> = (0..n).map(|i| weights[i + 1] * scale[i]).collect();
    raw.insert(0, weights[0] - (0..n).map(|i| raw[i] * mean[i]).sum::<f64>());
    raw
}

fn newton(rows: &[Vec<f64>], some: &[&Seen], weights: &[f64]) -> Vec<f64> {
    let n = weights.len();
    let mut bend: Vec<Vec<f64>> = (0..n).map(|i| (0..n).map(|j| if i == j { HELD } else { 0.0 }).collect()).collect();
    let mut slope: Vec<f64> = weights.iter().map(|w| -HELD * w).collect();
    for (row, seen) in rows.iter().zip(some) {
        let sum: f64 = row.iter().zip(weights).map(|(f, w)| f * w).sum();
        let said = 1.0 / (1.0 + (-sum.clamp(-30.0, 30.0)).exp());
        let off = f64::from(u8::from(seen.right)) - said;
        for i in 0..n {
            slope[i] += off * row[i];
            for j in 0..n {
                bend[i][j] += said * (1.0 - said) * row[i] * row[j];
            }
        }
    }
    solved(bend, slope)
}

/// Linear equations by elimination; the matrix is symmetric and held away from none.
fn solved(mut a: Vec<Vec<f64>>, mut b: Vec<f64>) -> Vec<f64> {
    let n = b.len();
    for i in 0..n {
        for k in i + 1..n {
            let part = a[k][i] / a[i][i];
            let (above, below) = a.split_at_mut(k);
            below[0].iter_mut().zip(&above[i]).skip(i).for_each(|(to, from)| *to -= part * from);
            b[k] -= part * b[i];
        }
    }
    for i in (0..n).rev() {
        let known: f64 = (i + 1..n).map(|j| a[i][j] * b[j]).sum();
        b[i] = (b[i] - known) / a[i][i];
    }
    b
}

/// The file the program reads, and beside it how far the odds can be trusted on other rows.
pub fn written(weights: &BTreeMap<String, Vec<f64>>) -> String {
    let row = |(kind, w): (&String, &Vec<f64>)| {
        format!("{kind} {}\n", w.iter().map(|w| format!("{w:.4}")).collect::<Vec<_>>().join(" "))
    };
    HEAD.to_owned() + &weights.iter().map(row).collect::<String>()
}

const HEAD: &str = "\
# How likely the best candidate of a line is what was meant, by what it does: a weight for all, then one for each thing its odds rest on, in
# the order of `Evidence::of` in `src/session/bind/evidence.rs`. Written by `railhand-train odds`.
";

/// For each kind: rows, how many are right, and of those at each tenth of the odds how many were right.
pub fn judged(weights: &BTreeMap<String, Vec<f64>>, others: &[Seen]) -> String {
    let mut said = String::new();
    for (kind, w) in weights {
        let of_it: Vec<(f64, bool)> =
            others.iter().filter(|s| s.kind == *kind).map(|s| (odds(w, &s.features), s.right)).collect();
        said += &format!("{kind:8} {:5} rows", of_it.len());
        for tenth in 0..10 {
            let some: Vec<bool> =
                of_it.iter().filter(|(p, _)| (p * 10.0).min(9.99) as usize == tenth).map(|(_, r)| *r).collect();
            let right = some.iter().filter(|r| **r).count();
            if !some.is_empty() {
                said += &format!("  .{tenth}: {right}/{}", some.len());
            }
        }
        said.push('\n');
    }
    said
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seen(right: bool, features: [f64; 2]) -> Seen {
        Seen { kind: "tell".into(), right, features: features.to_vec() }
    }

    #[test]
    fn odds_are_the_share_that_was_right() {
        // Without a feature that says anything: 3 of 4 were right.
        let all: Vec<Seen> = (0..400).map(|n| seen(n % 4 != 0, [1.0, f64::from(n % 2)])).collect();
        let of = |all: &[Seen], f: [f64; 2]| odds(&fitted(all)["tell"], &f);
        assert!((of(&all, [1.0, 1.0]) - 1.0).abs() < 0.02 && (of(&all, [1.0, 0.0]) - 0.5).abs() < 0.01);
        let plain: Vec<Seen> = (0..400).map(|n| seen(n % 4 != 0, [1.0, 2.0])).collect();
        assert!((of(&plain, [1.0, 2.0]) - 0.75).abs() < 0.005);
    }

    #[test]
    fn a_line_counts_once_and_a_row_of_another_form_is_refused() {
        let row = "tell\t0\t1\t0.9\t1 2\tline\tphrase\tphrase\n";
        assert_eq!(parse(&row.repeat(3)), Ok(vec![seen(true, [1.0, 2.0])]));
        assert!(parse("tell\t0\n").is_err_and(|why| why.starts_with("1:")));
    }
}
