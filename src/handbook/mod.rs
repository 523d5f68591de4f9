//! What the trade knows, each figure with where it stands and how well it is known.
//!
//! Three standings are kept apart and shown apart: published (and whether the page itself was read), common practice
//! with no published source, and from memory of a named document that still has to be looked up.

pub mod cautions;
pub mod cutting;
pub mod documents;
pub mod drain;
pub mod fixtures;
pub mod framing;
pub mod grout;
pub mod gypsum;
pub mod mortar;
pub mod paint;
pub mod pipe;
pub mod sheets;
pub mod tape;
pub mod tile;
pub mod trim;

/// A document that figures come from.
#[derive(Debug, PartialEq, Eq)]
pub struct Document {
    /// Its short name, as a person would cite it.
    pub title: &'static str,
    /// Edition, year or number; empty where the document has none.
    pub edition: &'static str,
    /// Who issued it.
    pub publisher: &'static str,
}

/// How a figure is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// The place named was read, in the original or in a copy.
    Read,
    /// Follows by exact arithmetic or geometry.
    Computed,
    /// What the trade does; no published source.
    CommonPractice,
    /// Remembered from the document named, which was not seen.
    FromMemory,
}

/// Where a rule or a figure stands, and how well it is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cite {
    /// The document; `None` for common practice and for arithmetic on nothing but the job.
    pub document: Option<&'static Document>,
    /// Section, table, page or, without a document, what the practice is.
    pub clause: &'static str,
    /// How it is known.
    pub known: Known,
}

impl Cite {
    /// A place in a document that was read.
    #[must_use]
    pub const fn read(document: &'static Document, clause: &'static str) -> Cite {
        Cite {
            document: Some(document),
            clause,
            known: Known::Read,
        }
    }
    /// A place in a document, from memory.
    #[must_use]
    pub const fn memory(document: &'static Document, clause: &'static str) -> Cite {
        Cite {
            document: Some(document),
            clause,
            known: Known::FromMemory,
        }
    }
    /// Common practice, no published source.
    #[must_use]
    pub const fn practice(what: &'static str) -> Cite {
        Cite {
            document: None,
            clause: what,
            known: Known::CommonPractice,
        }
    }
    /// Arithmetic on figures of a document that was read, which does not print the result itself.
    #[must_use]
    pub const fn figured(document: &'static Document, clause: &'static str) -> Cite {
        Cite {
            document: Some(document),
            clause,
            known: Known::Computed,
        }
    }
    /// Arithmetic or geometry.
    #[must_use]
    pub const fn computed(what: &'static str) -> Cite {
        Cite {
            document: None,
            clause: what,
            known: Known::Computed,
        }
    }
}

/// A figure and where it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The figure, in the publisher's units where those are exact here.
    pub value: T,
    /// Where it stands.
    pub cite: Cite,
}

impl<T> Sourced<T> {
    /// A figure with its place.
    pub const fn new(value: T, cite: Cite) -> Sourced<T> {
        Sourced { value, cite }
    }
}
