//! The batch in the bucket: it runs on whatever is shown, and while the program is closed.

use chrono::{DateTime, FixedOffset, Local};

use super::{App, Chip, Command, Row, Tone};
use crate::measure::Amount;
use crate::takeoff::Batch;
use crate::trades::{grout, mortar};

/// Where a batch stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Stage {
    /// It rests, so many minutes more.
    Rests(f64),
    /// Stirred again, it is good for so many minutes more.
    Good(f64),
    /// It is past its life by so many minutes.
    Past(f64),
}

/// Where a batch stands at a time.
pub(super) fn stage(batch: &Batch, now: DateTime<FixedOffset>) -> Stage {
    let minutes = (now - batch.mixed).num_seconds() as f64 / 60.0;
    if minutes < batch.rest {
        Stage::Rests(batch.rest - minutes)
    } else if minutes < batch.good {
        Stage::Good(batch.good - minutes)
    } else {
        Stage::Past(minutes - batch.good)
    }
}

/// The longer end of an amount of minutes or hours, in minutes.
fn longest(amount: &Amount) -> Option<f64> {
    match amount {
        Amount::Minutes(minutes) => Some(*minutes),
        Amount::Hours(hours) => Some(hours * 60.0),
        Amount::Range(_, most) => longest(most),
        _ => None,
    }
}

/// The shorter end of an amount of minutes or hours, in minutes.
fn shortest(amount: &Amount) -> Option<f64> {
    match amount {
        Amount::Range(least, _) => longest(least),
        other => longest(other),
    }
}

impl App {
    /// A batch of a grout or mortar figure was mixed now.
    pub(super) fn mixed(&mut self, task: usize) {
        let grouted = self
            .grout_ask(task)
            .and_then(|ask| grout::figure(&ask).ok())
            .map(|figure| (longest(&figure.slake), shortest(&figure.pot_life)));
        let times = grouted.or_else(|| {
            let figure = mortar::figure(&self.mortar_ask(task)?).ok()?;
            let slake = longest(&figure.batches.slake);
            Some((slake, Some(figure.batches.minutes + slake.unwrap_or(0.0))))
        });
        let Some((rest, good)) = times else { return };
        let batch = Batch {
            mixed: Local::now().fixed_offset(),
            rest: rest.unwrap_or(0.0),
            good: good.unwrap_or(60.0),
        };
        self.edit("The batch is timed", |job| job.batch = Some(batch));
    }

    /// Where a batch is begun, and the one in the bucket.
    pub(super) fn batch_begun(&self, task: usize) -> Vec<Row> {
        let begin = if self.job.batch.is_some() {
            "The next batch is mixed now: time it"
        } else {
            "A batch is mixed now: time it"
        };
        let mut rows = vec![Row::button(begin, Command::Mixed(task))];
        rows.extend(self.batch_row());
        rows
    }

    /// What stands on every page while a batch is in the bucket.
    pub(super) fn batch_row(&self) -> Option<Row> {
        let batch = self.job.batch?;
        let minutes = |minutes: f64| self.amount(Amount::Minutes(minutes.ceil().max(1.0)));
        let (tone, text) = match stage(&batch, Local::now().fixed_offset()) {
            Stage::Rests(left) => (
                Tone::Note,
                format!(
                    "The batch rests. Stir it again in {}, and add no water after that.",
                    minutes(left)
                ),
            ),
            Stage::Good(left) => (
                Tone::Good,
                format!(
                    "Stirred again, the batch is good for {} more.",
                    minutes(left)
                ),
            ),
            Stage::Past(over) => (
                Tone::Stop,
                format!(
                    "The batch is past its life by {}. Throw it away; water does not bring it back.",
                    minutes(over)
                ),
            ),
        };
        Some(Row::Note {
            tone,
            text,
            detail: String::new(),
            mend: Some(Chip::new("The bucket is empty", false, Command::BatchDone)),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_batch_rests_is_good_and_is_past() {
        let mixed = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
        let batch = Batch {
            mixed,
            rest: 10.0,
            good: 120.0,
        };
        let after = |minutes| mixed + chrono::Duration::minutes(minutes);
        assert_eq!(stage(&batch, after(4)), Stage::Rests(6.0));
        assert_eq!(stage(&batch, after(10)), Stage::Good(110.0));
        assert_eq!(stage(&batch, after(125)), Stage::Past(5.0));
    }
}
