//! A document flipped at every bit, cut at every length and lied in: refused whole, and salvaged part by part.

use proptest::prelude::*;
use storyrod::store::document::{FORMAT, Lost, Part, Salvage, format_of, read, salvage, write};
use storyrod::store::{Kind, OpenError, SaveError, seal, unseal};

const HEADER: usize = 32;

/// One part that deflates, one empty, one that does not deflate, one that looks like a marker.
fn parts() -> Vec<Part> {
    let part = |kind, id, body: &[u8]| Part {
        kind,
        id,
        body: body.to_vec(),
    };
    vec![
        part(1, 7, &b"wall ".repeat(40)),
        part(2, 0, b""),
        part(2, u64::MAX, b"\x01\x93 a tape said \xF3\xF3p\xF3pt"),
        part(9, 1 << 40, b"the last"),
    ]
}

fn document() -> Vec<u8> {
    write(Kind::Job, &parts()).unwrap()
}

/// Where each part begins, and where the last ends.
fn edges() -> Vec<usize> {
    (0..=parts().len())
        .map(|n| write(Kind::Job, &parts()[..n]).unwrap().len())
        .collect()
}

fn whole_but(gone: Option<usize>) -> Vec<Part> {
    let all = parts().into_iter().enumerate();
    all.filter(|(at, _)| Some(*at) != gone)
        .map(|(_, part)| part)
        .collect()
}

/// Part `at` with its header made to say something else, and every checksum right again.
fn with_claim(at: usize, field: usize, claim: &[u8]) -> Vec<u8> {
    let (mut bytes, part) = (document(), edges()[at]);
    bytes[part + field..part + field + claim.len()].copy_from_slice(claim);
    let sum = crc32fast::hash(&bytes[part + 4..part + 28]);
    bytes[part + 28..part + 32].copy_from_slice(&sum.to_le_bytes());
    seal_again(&mut bytes);
    bytes
}

/// Makes the checksums of the document's own header right for what stands in it.
fn seal_again(bytes: &mut [u8]) {
    let mut sums = crc32fast::Hasher::new();
    for part in &edges()[..parts().len()] {
        sums.update(&bytes[part + 28..part + 32]);
    }
    bytes[24..28].copy_from_slice(&sums.finalize().to_le_bytes());
    let sum = crc32fast::hash(&bytes[8..28]);
    bytes[28..32].copy_from_slice(&sum.to_le_bytes());
}

#[test]
fn a_document_comes_back_as_it_was() {
    assert_eq!(read(Kind::Job, &document()), Ok(parts()));
    assert_eq!(read(Kind::Job, &write(Kind::Job, &[]).unwrap()), Ok(vec![]));
    assert_eq!(read(Kind::Shelf, &document()), Err(OpenError::WrongKind));
    assert!(edges()[1] - edges()[0] < 100, "the first part is deflated");
    assert_eq!(
        salvage(&document()),
        Salvage {
            parts: parts(),
            lost: vec![],
            header_whole: true
        }
    );
}

#[test]
fn the_two_formats_know_each_other() {
    let old = seal(Kind::Job, b"as it was");
    assert_eq!(format_of(&old), Some(1));
    assert_eq!(format_of(&document()), Some(FORMAT));
    assert_eq!(format_of(&document()[..9]), None);
    assert_eq!(format_of(b"someone's notes"), None);
    // A program of before the second format says which it needs.
    assert_eq!(
        unseal(Kind::Job, &document()),
        Err(OpenError::Newer { found: 2 })
    );
    let mut newer = document();
    newer[8] = 3;
    assert_eq!(read(Kind::Job, &newer), Err(OpenError::Newer { found: 3 }));
    assert_eq!(read(Kind::Job, &old), Err(OpenError::Damaged));
}

#[test]
fn every_flipped_bit_is_refused_and_costs_one_part() {
    let (whole, edges) = (document(), edges());
    for bit in 0..whole.len() * 8 {
        let mut bytes = whole.clone();
        bytes[bit / 8] ^= 1 << (bit % 8);
        assert!(read(Kind::Job, &bytes).is_err(), "bit {bit}");
        let hit = edges.iter().rposition(|edge| *edge <= bit / 8);
        let found = salvage(&bytes);
        assert_eq!(found.parts, whole_but(hit), "bit {bit}");
        assert_eq!(found.header_whole, hit.is_some(), "bit {bit}");
        assert_eq!(found.lost.len(), usize::from(hit.is_some()), "bit {bit}");
        if let Some(hit) = hit.filter(|hit| bit / 8 >= edges[*hit] + HEADER) {
            let part = &parts()[hit];
            assert_eq!(
                found.lost,
                [Lost {
                    kind: Some(part.kind),
                    id: Some(part.id)
                }],
                "bit {bit}: a whole header says which part it was"
            );
        }
    }
}

#[test]
fn every_cut_is_refused_and_costs_only_what_is_cut_off() {
    let (whole, edges) = (document(), edges());
    for length in 0..whole.len() {
        let bytes = &whole[..length];
        assert!(read(Kind::Job, bytes).is_err(), "cut at {length}");
        let left = edges[1..].iter().filter(|end| **end <= length).count();
        let found = salvage(bytes);
        assert_eq!(found.parts, parts()[..left], "cut at {length}");
        if length >= HEADER {
            assert!(found.header_whole);
            assert_eq!(found.lost.len(), parts().len() - left, "cut at {length}");
        }
    }
    let mut longer = whole;
    longer.push(0);
    assert_eq!(read(Kind::Job, &longer), Err(OpenError::CutShort));
    assert_eq!(salvage(&longer).parts, parts());
}

#[test]
fn bytes_missing_or_added_anywhere_cost_one_part() {
    let (whole, edges) = (document(), edges());
    for at in 0..whole.len() {
        for add in [false, true] {
            let mut bytes = whole.clone();
            if add {
                bytes.insert(at, 0xAA);
            } else {
                bytes.remove(at);
            }
            assert!(read(Kind::Job, &bytes).is_err(), "at {at}");
            let hit = edges.iter().rposition(|edge| *edge <= at);
            let found = salvage(&bytes).parts;
            // What is added before the first byte of a part hits none.
            let none = add && edges.contains(&at);
            assert_eq!(found, whole_but(hit.filter(|_| !none)), "at {at}, {add}");
        }
    }
}

#[test]
fn a_part_of_another_time_is_not_taken_for_one_of_this() {
    let mut other = parts();
    other[3].body = b"the next".to_vec();
    let (here, there) = (document(), write(Kind::Job, &other).unwrap());
    assert_eq!(here.len(), there.len());
    let from = edges()[3];
    let mixed = [&here[..from], &there[from..]].concat();
    assert_eq!(read(Kind::Job, &mixed), Err(OpenError::Damaged));
}

#[test]
fn lengths_that_are_lies_are_not_believed() {
    let most = u32::MAX.to_le_bytes();
    let (stored, plain) = (16, 20);
    for at in 0..parts().len() {
        for (field, claim) in [(stored, most), (plain, most), (plain, 0u32.to_le_bytes())] {
            if at == 1 && claim == [0; 4] {
                continue; // That one is empty.
            }
            let bytes = with_claim(at, field, &claim);
            assert_eq!(read(Kind::Job, &bytes), Err(OpenError::Damaged));
            assert_eq!(salvage(&bytes).parts, whole_but(Some(at)), "part {at}");
        }
        let unknown = with_claim(at, 6, &[2, 0]);
        assert_eq!(read(Kind::Job, &unknown), Err(OpenError::Damaged));
    }
    for (field, claim) in [
        (12, &most[..]),
        (16, &(1u64 << 60).to_le_bytes()),
        (16, &u64::MAX.to_le_bytes()),
    ] {
        let mut bytes = document();
        bytes[field..field + claim.len()].copy_from_slice(claim);
        seal_again(&mut bytes);
        assert!(read(Kind::Job, &bytes).is_err());
        let found = salvage(&bytes);
        assert_eq!(found.parts, parts());
        assert!(found.lost.len() <= 1 << 20, "{}", found.lost.len());
    }
}

/// A small file that would be a large one: more than a part may hold, and parts that together are more than all may.
#[test]
fn what_swells_without_end_is_refused() {
    let body = vec![0; 64 << 20];
    let part = |id| Part {
        kind: 1,
        id,
        body: body.clone(),
    };
    let one = write(Kind::Job, &[part(0)]).unwrap();
    assert!(one.len() < 1 << 20);
    assert_eq!(read(Kind::Job, &one).unwrap()[0].body.len(), body.len());
    let mut many = one.clone();
    for _ in 0..9 {
        many.extend_from_slice(&one[HEADER..]);
    }
    let mut sums = crc32fast::Hasher::new();
    for _ in 0..10 {
        sums.update(&one[HEADER + 28..HEADER + 32]);
    }
    many[12] = 10;
    let length = many.len() as u64;
    many[16..24].copy_from_slice(&length.to_le_bytes());
    many[24..28].copy_from_slice(&sums.finalize().to_le_bytes());
    let sum = crc32fast::hash(&many[8..28]);
    many[28..32].copy_from_slice(&sum.to_le_bytes());
    assert_eq!(read(Kind::Job, &many), Err(OpenError::Damaged));
    let found = salvage(&many);
    assert_eq!((found.parts.len(), found.lost.len()), (4, 6));
    let large = Part {
        kind: 1,
        id: 0,
        body: vec![0; (64 << 20) + 1],
    };
    assert_eq!(write(Kind::Job, &[large]), Err(SaveError::TooLarge));
}

/// Headers made on purpose, each of which claims all that follows: gone through in a time that grows with the file.
#[test]
fn claims_over_claims_end() {
    let one = write(
        Kind::Job,
        &[Part {
            kind: 1,
            id: 1,
            body: b"x".to_vec(),
        }],
    )
    .unwrap();
    let count = 1 << 16;
    let mut bytes = Vec::new();
    for n in 0..count {
        let mut header = one[HEADER..HEADER + 32].to_vec();
        let rest = (count - n - 1) as u32 * 32;
        header[16..20].copy_from_slice(&rest.saturating_sub(1).to_le_bytes());
        let sum = crc32fast::hash(&header[4..28]);
        header[28..32].copy_from_slice(&sum.to_le_bytes());
        bytes.extend(header);
    }
    assert!(salvage(&bytes).parts.is_empty());
}

fn any_parts() -> impl Strategy<Value = Vec<Part>> {
    let body = prop_oneof![
        proptest::collection::vec(any::<u8>(), 0..200),
        (any::<u8>(), 0usize..3000).prop_map(|(byte, length)| vec![byte; length]),
    ];
    let part = (any::<u16>(), any::<u64>(), body);
    proptest::collection::vec(
        part.prop_map(|(kind, id, body)| Part { kind, id, body }),
        0..8,
    )
}

proptest! {
    #[test]
    fn prop_any_parts_come_back(parts in any_parts()) {
        let bytes = write(Kind::Job, &parts).unwrap();
        prop_assert_eq!(read(Kind::Job, &bytes), Ok(parts.clone()));
        prop_assert_eq!(salvage(&bytes).parts, parts);
    }

    #[test]
    fn prop_any_bytes_are_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..2000)) {
        let _ = (read(Kind::Job, &bytes), format_of(&bytes), salvage(&bytes));
        let behind = [&document()[..40], &bytes[..]].concat();
        let _ = (read(Kind::Job, &behind), salvage(&behind));
    }

    /// Several hits at once: nothing is read whole, and nothing is salvaged that was not written.
    #[test]
    fn prop_many_hits_bring_nothing_that_was_not_there(
        hits in proptest::collection::vec((any::<proptest::sample::Index>(), 1u8..), 1..12),
    ) {
        let mut bytes = document();
        for (at, change) in hits {
            let length = bytes.len();
            bytes[at.index(length)] ^= change;
        }
        prop_assume!(bytes != document());
        prop_assert!(read(Kind::Job, &bytes).is_err());
        let found = salvage(&bytes);
        prop_assert!(found.parts.iter().all(|part| parts().contains(part)));
        if found.header_whole {
            prop_assert_eq!(found.parts.len() + found.lost.len(), parts().len());
        }
    }
}
