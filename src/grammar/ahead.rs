//! A slice of anything as nom input: nom itself offers bytes and text only.

use nom::{Err, IResult, Input, Needed, Parser};

/// What is still ahead of a parser.
#[derive(Debug, PartialEq)]
pub struct Ahead<'a, T>(pub &'a [T]);

impl<T> Clone for Ahead<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Ahead<'_, T> {}

impl<'a, T> std::ops::Deref for Ahead<'a, T> {
    type Target = &'a [T];
    fn deref(&self) -> &&'a [T] {
        &self.0
    }
}

impl<'a, T> Input for Ahead<'a, T> {
    type Item = &'a T;
    type Iter = std::slice::Iter<'a, T>;
    type IterIndices = std::iter::Enumerate<std::slice::Iter<'a, T>>;

    fn input_len(&self) -> usize {
        self.0.len()
    }

    fn take(&self, index: usize) -> Self {
        Ahead(&self.0[..index])
    }

    fn take_from(&self, index: usize) -> Self {
        Ahead(&self.0[index..])
    }

    fn take_split(&self, index: usize) -> (Self, Self) {
        let (before, after) = self.0.split_at(index);
        (Ahead(after), Ahead(before))
    }

    fn position<P: Fn(Self::Item) -> bool>(&self, predicate: P) -> Option<usize> {
        self.0.iter().position(predicate)
    }

    fn iter_elements(&self) -> Self::Iter {
        self.0.iter()
    }

    fn iter_indices(&self) -> Self::IterIndices {
        self.0.iter().enumerate()
    }

    fn slice_index(&self, count: usize) -> Result<usize, Needed> {
        if self.0.len() >= count { Ok(count) } else { Err(Needed::new(count - self.0.len())) }
    }
}

/// One element, looked at by a function.
pub fn one<'a, T, O>(look: impl Fn(&T) -> Option<O>) -> impl Parser<Ahead<'a, T>, Output = O, Error = ()>
where
    T: 'a,
{
    move |input: Ahead<'a, T>| -> IResult<Ahead<'a, T>, O, ()> {
        match input.0.split_first().and_then(|(first, rest)| Some((rest, look(first)?))) {
            Some((rest, read)) => Ok((Ahead(rest), read)),
            None => Err(Err::Error(())),
        }
    }
}
