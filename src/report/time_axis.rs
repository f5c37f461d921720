//! The time axis of a drawing: whole weeks, and which days are labelled below them.

use jiff::civil::Date;

use progress::Window;

/// Where the axis lies on a drawing, in the drawing's own unit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Across {
    pub left: i32,
    pub right: i32,
    /// What a label of a day needs from one to the next, and what a label of a month needs.
    pub day_label: f64,
    pub month_label: f64,
}

impl Across {
    fn width(self) -> f64 {
        f64::from(self.right - self.left)
    }
}

/// The time axis of a drawing.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axis {
    pub window: Window,
    pub across: Across,
}

impl Axis {
    /// Days shown; whole weeks, so that the last one is not cut.
    pub fn days(&self) -> f64 {
        let days = days_between(self.window.from, self.window.to) + 1;
        (days.max(1) as f64 / 7.0).ceil() * 7.0
    }

    pub fn weeks(&self) -> usize {
        (self.days() / 7.0) as usize
    }

    /// Where a day begins, in days from the left.
    pub fn at(&self, day: Date) -> f64 {
        days_between(self.window.from, day) as f64
    }

    /// Where a place in days stands, from the left of the drawing.
    pub fn x(&self, at: f64) -> i32 {
        self.across.left + (at / self.days() * self.across.width()).round() as i32
    }

    /// Days that are labelled, with their place: Mondays, or the beginnings of months where there are many.
    pub fn ticks(&self) -> Ticks {
        let weeks = self.weeks();
        let widest = |each: f64, least: f64| (least / each).ceil().max(1.0) as usize;
        let week_width = self.across.width() / weeks as f64;
        let day = |n: usize| self.window.from.checked_add(jiff::Span::new().days(n as i64)).ok();
        if weeks <= 30 {
            let step = widest(week_width, self.across.day_label);
            let days = (0..weeks).step_by(step).filter_map(|week| day(week * 7)).collect();
            return Ticks { days, months: false };
        }
        let step =
            [1, 2, 3, 4, 6, 12].into_iter().find(|&months| week_width * 4.345 * months as f64 >= self.across.month_label).unwrap_or(12);
        let firsts = (0..self.days() as usize)
            .filter_map(day)
            .filter(|day| day.day() == 1 && (usize::from(day.month().unsigned_abs()) - 1).is_multiple_of(step));
        Ticks { days: firsts.collect(), months: true }
    }
}

/// What is labelled below the drawings.
#[derive(Debug, Clone)]
pub(super) struct Ticks {
    pub days: Vec<Date>,
    /// They are beginnings of months.
    pub months: bool,
}

/// From one day to another; negative backwards.
pub(super) fn days_between(from: Date, to: Date) -> i64 {
    i64::from(from.duration_until(to).as_hours() as i32 / 24)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::page_axis;
    use crate::drawing::printed_axis;
    use jiff::civil::date;

    #[test]
    fn the_axis_shows_whole_weeks_and_labels_that_do_not_touch() {
        for weeks in [1, 2, 12, 30, 31, 52, 104] {
            let to = date(2026, 11, 25);
            for (axis, apart) in [(printed_axis(Window::weeks(to, weeks)), 148), (page_axis(Window::weeks(to, weeks)), 78)] {
                assert_eq!(axis.weeks(), weeks as usize);
                assert!(axis.x(0.0) == axis.across.left && axis.x(axis.days()) == axis.across.right);
                let ticks = axis.ticks();
                assert!(!ticks.days.is_empty() && ticks.months == (weeks > 30), "{weeks}");
                let places: Vec<i32> = ticks.days.iter().map(|day| axis.x(axis.at(*day))).collect();
                assert!(places.windows(2).all(|two| two[1] - two[0] >= apart), "{weeks}: {places:?}");
            }
        }
    }
}
