//! A slice of anything as nom input: nom itself offers bytes and text only.

use super::effort::Effort;
use nom::{Err, IResult, Input, Needed, Parser};
use std::cell::Cell;
use std::ops::Deref;

/// What is still ahead of a parser, and, if it is watched, how far it has been looked at.
#[derive(Debug)]
pub struct Ahead<'a, T> {
    slice: &'a [T],
    watch: Option<&'a Watch<'a>>,
}

/// What is noted of the looks parsers take.
#[derive(Debug)]
pub struct Watch<'a> {
    /// The fewest elements that lay ahead where one was looked at; 0 for the end itself.
    least: Cell<usize>,
    effort: &'a Effort,
}

impl<'a> Watch<'a> {
    /// No look taken yet; each is work done.
    pub fn new(effort: &'a Effort) -> Watch<'a> {
        Watch { least: Cell::new(usize::MAX), effort }
    }

    /// How many elements lay ahead at the furthest one any parser looked at.
    pub fn least(&self) -> usize {
        self.least.get()
    }
}

impl<'a, T> Ahead<'a, T> {
    /// A slice to parse.
    pub fn new(slice: &'a [T]) -> Ahead<'a, T> {
        Ahead { slice, watch: None }
    }

    /// The same, noting how far any parser looked: what it gives depends on nothing beyond
    /// that. Once the work is used up nothing more is read.
    pub fn watched(slice: &'a [T], watch: &'a Watch<'a>) -> Ahead<'a, T> {
        Ahead { slice, watch: Some(watch) }
    }

    /// The first element.
    pub fn first(&self) -> Option<&'a T> {
        self.look(1);
        self.slice.first()
    }

    /// How many elements are ahead: a place, not a look at what is there.
    pub fn len(&self) -> usize {
        self.slice.len()
    }

    /// True at the end.
    pub fn is_empty(&self) -> bool {
        self.look(1);
        self.slice.is_empty()
    }

    fn look(&self, elements: usize) {
        if let Some(watch) = self.watch {
            watch.least.set(watch.least.get().min((self.slice.len() + 1).saturating_sub(elements)));
            watch.effort.spend(elements);
        }
    }

    fn at(self, slice: &'a [T]) -> Ahead<'a, T> {
        Ahead { slice, ..self }
    }
}

impl<T> Clone for Ahead<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Ahead<'_, T> {}

impl<'a, T> Deref for Ahead<'a, T> {
    type Target = &'a [T];
    /// The whole slice: all of it counts as looked at.
    fn deref(&self) -> &&'a [T] {
        self.look(self.slice.len() + 1);
        &self.slice
    }
}

impl<'a, T> Input for Ahead<'a, T> {
    type Item = &'a T;
    type Iter = std::slice::Iter<'a, T>;
    type IterIndices = std::iter::Enumerate<std::slice::Iter<'a, T>>;

    fn input_len(&self) -> usize {
        self.slice.len()
    }

    fn take(&self, index: usize) -> Self {
        self.at(&self.slice[..index])
    }

    fn take_from(&self, index: usize) -> Self {
        self.at(&self.slice[index..])
    }

    fn take_split(&self, index: usize) -> (Self, Self) {
        let (before, after) = self.slice.split_at(index);
        (self.at(after), self.at(before))
    }

    fn position<P: Fn(Self::Item) -> bool>(&self, predicate: P) -> Option<usize> {
        self.deref().iter().position(predicate)
    }

    fn iter_elements(&self) -> Self::Iter {
        self.deref().iter()
    }

    fn iter_indices(&self) -> Self::IterIndices {
        self.deref().iter().enumerate()
    }

    fn slice_index(&self, count: usize) -> Result<usize, Needed> {
        if self.slice.len() >= count { Ok(count) } else { Err(Needed::new(count - self.slice.len())) }
    }
}

/// One element, looked at by a function.
pub fn one<'a, T, O>(look: impl Fn(&T) -> Option<O>) -> impl Parser<Ahead<'a, T>, Output = O, Error = ()>
where
    T: 'a,
{
    move |input: Ahead<'a, T>| -> IResult<Ahead<'a, T>, O, ()> {
        input.look(1);
        if input.watch.is_some_and(|w| w.effort.is_over()) {
            return Err(Err::Failure(()));
        }
        match input.slice.split_first().and_then(|(first, rest)| Some((rest, look(first)?))) {
            Some((rest, read)) => Ok((input.at(rest), read)),
            None => Err(Err::Error(())),
        }
    }
}
