//! The log of pictures brought together: every picture of either side, its marks as one side has them.

use std::sync::Arc;

use super::report::{Merge, single_name};
use super::{EntryKind, Side, Stays, all_ids, their_copy, verdict};
use crate::photo::Photo;
use crate::site::Id;

/// What a picture is called where it stands among others.
fn called(photo: &Photo) -> String {
    let day = photo.when.format("%-d %b %Y, %H:%M");
    match photo.title.as_str() {
        "" => format!("{}, {day}", single_name(EntryKind::Photo)),
        title => format!("{title}, {day}"),
    }
}

/// The pictures that stay. Where both changed one it is there twice, its bytes once.
pub(super) fn photos(
    ours: &Side<'_>,
    theirs: &Side<'_>,
    report: &mut Vec<Merge>,
) -> Vec<Arc<Photo>> {
    let mut photos = Vec::new();
    let ids = all_ids(
        ours.job.photos.iter().map(|photo| photo.id),
        theirs.job.photos.iter().map(|photo| photo.id),
    );
    for id in ids {
        let entry = (EntryKind::Photo, id);
        let (stays, said) = verdict(ours, theirs, entry);
        let (a, b) = (ours.photo(id), theirs.photo(id));
        said.into(report, entry, || {
            a.or(b).map(|photo| called(photo)).unwrap_or_default()
        });
        match (stays, a, b) {
            (Stays::Ours, Some(photo), _) | (Stays::Theirs, _, Some(photo)) => {
                photos.push(Arc::clone(photo));
            }
            (Stays::Both, Some(a), Some(b)) => {
                let copy = Photo {
                    id: Id::fresh(),
                    title: their_copy(&b.title),
                    ..(**b).clone()
                };
                report.push(Merge::KeptBoth {
                    entry,
                    name: called(a),
                    copy: (EntryKind::Photo, copy.id),
                });
                photos.extend([Arc::clone(a), Arc::new(copy)]);
            }
            _ => {}
        }
    }
    photos
}
