//! What goes into the database and comes out of it, the same for both engines.

use super::error::ClinicError;

/// One value of a column.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    Null,
    Int(i64),
    Real(f64),
    Text(String),
    Blob(Vec<u8>),
}

impl From<i64> for Value {
    fn from(value: i64) -> Self {
        Self::Int(value)
    }
}

impl From<u32> for Value {
    fn from(value: u32) -> Self {
        Self::Int(value.into())
    }
}

impl From<usize> for Value {
    fn from(value: usize) -> Self {
        Self::Int(i64::try_from(value).unwrap_or(i64::MAX))
    }
}

impl From<bool> for Value {
    fn from(value: bool) -> Self {
        Self::Int(value.into())
    }
}

/// What could not be measured is NULL.
impl From<f64> for Value {
    fn from(value: f64) -> Self {
        if value.is_finite() { Self::Real(value) } else { Self::Null }
    }
}

/// PostgreSQL's texts hold no NUL; so that both engines keep the same, it is replaced for both.
impl From<&str> for Value {
    fn from(value: &str) -> Self {
        Self::Text(value.replace('\0', "\u{FFFD}"))
    }
}

impl From<String> for Value {
    fn from(value: String) -> Self {
        if value.contains('\0') { Self::from(value.as_str()) } else { Self::Text(value) }
    }
}

impl From<&String> for Value {
    fn from(value: &String) -> Self {
        Self::from(value.as_str())
    }
}

impl From<Vec<u8>> for Value {
    fn from(value: Vec<u8>) -> Self {
        Self::Blob(value)
    }
}

macro_rules! words {
    ($($Word:ty),+) => {
        $(impl From<$Word> for Value {
            fn from(word: $Word) -> Self {
                Self::from(word.as_str())
            }
        })+
    };
}
words!(model::StepReason, model::FrequencyWeighting, model::TimeWeighting);

impl From<model::LevelCalibration> for Value {
    fn from(calibration: model::LevelCalibration) -> Self {
        Self::from(calibration.name())
    }
}

impl From<super::facts::EventKind> for Value {
    fn from(kind: super::facts::EventKind) -> Self {
        Self::from(kind.word())
    }
}

impl From<jiff::Timestamp> for Value {
    fn from(time: jiff::Timestamp) -> Self {
        Self::Text(time.to_string())
    }
}

impl From<jiff::ZonedDateTime> for Value {
    fn from(time: jiff::ZonedDateTime) -> Self {
        Self::Text(time.to_string())
    }
}

impl From<jiff::civil::Date> for Value {
    fn from(value: jiff::civil::Date) -> Self {
        Self::Text(value.to_string())
    }
}

impl<T: Into<Value>> From<Option<T>> for Value {
    fn from(value: Option<T>) -> Self {
        value.map_or(Self::Null, Into::into)
    }
}

/// The values of a statement: `values![client, "text", 1.5]`.
macro_rules! values {
    ($($value:expr),* $(,)?) => { [$($crate::Value::from($value)),*] };
}
pub(super) use values;

/// One row that was read. The readers say where what is found does not fit.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    place: std::rc::Rc<str>,
    values: Vec<Value>,
}

impl Row {
    pub(super) fn new(place: &std::rc::Rc<str>, values: Vec<Value>) -> Self {
        Self { place: place.clone(), values }
    }

    /// All values.
    #[must_use]
    pub fn values(&self) -> &[Value] {
        &self.values
    }

    /// Nothing stands there.
    #[must_use]
    pub fn is_null(&self, column: usize) -> bool {
        matches!(self.values.get(column), Some(Value::Null))
    }

    fn unreadable<T>(&self, column: usize, wanted: &str) -> Result<T, ClinicError> {
        let cause = format!("column {} of a row is no {wanted}", column + 1);
        Err(ClinicError::Unreadable { place: self.place.to_string(), cause })
    }

    pub fn int(&self, column: usize) -> Result<i64, ClinicError> {
        match self.values.get(column) {
            Some(Value::Int(value)) => Ok(*value),
            _ => self.unreadable(column, "whole number"),
        }
    }

    pub fn count(&self, column: usize) -> Result<u32, ClinicError> {
        self.int(column)?.try_into().or_else(|_| self.unreadable(column, "count"))
    }

    pub fn flag(&self, column: usize) -> Result<bool, ClinicError> {
        self.int(column).map(|value| value != 0)
    }

    pub fn maybe_int(&self, column: usize) -> Result<Option<i64>, ClinicError> {
        match self.values.get(column) {
            Some(Value::Null) => Ok(None),
            _ => self.int(column).map(Some),
        }
    }

    pub fn real(&self, column: usize) -> Result<f64, ClinicError> {
        match self.values.get(column) {
            Some(Value::Real(value)) => Ok(*value),
            #[allow(clippy::cast_precision_loss, reason = "a count")]
            Some(Value::Int(value)) => Ok(*value as f64),
            _ => self.unreadable(column, "number"),
        }
    }

    pub fn maybe_real(&self, column: usize) -> Result<Option<f64>, ClinicError> {
        match self.values.get(column) {
            Some(Value::Null) => Ok(None),
            _ => self.real(column).map(Some),
        }
    }

    pub fn text(&self, column: usize) -> Result<String, ClinicError> {
        match self.values.get(column) {
            Some(Value::Text(value)) => Ok(value.clone()),
            _ => self.unreadable(column, "text"),
        }
    }

    pub fn maybe_text(&self, column: usize) -> Result<Option<String>, ClinicError> {
        match self.values.get(column) {
            Some(Value::Null) => Ok(None),
            _ => self.text(column).map(Some),
        }
    }

    pub fn blob(&self, column: usize) -> Result<&[u8], ClinicError> {
        match self.values.get(column) {
            Some(Value::Blob(value)) => Ok(value),
            _ => self.unreadable(column, "run of bytes"),
        }
    }

    /// What stands as text and is something else: a date, a time.
    pub fn parsed<T: std::str::FromStr>(&self, column: usize) -> Result<T, ClinicError> {
        self.text(column)?.parse().or_else(|_| self.unreadable(column, "date or time"))
    }

    pub fn maybe_parsed<T: std::str::FromStr>(&self, column: usize) -> Result<Option<T>, ClinicError> {
        match self.values.get(column) {
            Some(Value::Null) => Ok(None),
            _ => self.parsed(column).map(Some),
        }
    }
}
