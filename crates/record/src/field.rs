//! Fields: what one figure, word or choice of the record holds, and how it is read.
//!
//! What it is: the one description that form, sheet line, file and search all read.
//! What it is not: any particular field: those stand in their tables.

use measure::{
    civil::Date,
    limit::Limit,
    money::Money,
    prefs::Prefs,
    say::{Arg, Say},
    typed::{ReadError, Typed},
    unit::{Kind, Unit},
};

use crate::{
    id::{LotId, PhotoId, StepId},
    wig::{
        shade::{Along, Shade},
        steps::Planned,
        zone::{Zone, Zones},
    },
};

/// A field of a table.
#[derive(Debug, PartialEq)]
pub struct Field {
    /// Its name in files; its label is the sentence `field.<name>`.
    pub name: &'static str,
    /// What it holds.
    pub holds: Holds,
    /// Whether the thing means nothing without it.
    pub required: bool,
    /// Key of the caution that stands beside it.
    pub caution: Option<&'static str>,
}

/// A field that may be left empty; for tables.
pub const fn field(name: &'static str, holds: Holds) -> Field {
    Field { name, holds, required: false, caution: None }
}

/// A field that must be filled; for tables.
pub const fn required(name: &'static str, holds: Holds) -> Field {
    Field { name, holds, required: true, caution: None }
}

/// What a field holds.
#[derive(Debug, PartialEq)]
pub enum Holds {
    /// A figure with a unit within a limit.
    Quantity(&'static Limit),
    /// A figure of one of several kinds; a bare number is of the first.
    AnyOf(&'static [&'static Limit]),
    /// Money.
    Money,
    /// A whole number, ends allowed.
    Count(u32, u32),
    /// Words, up to this many characters.
    Text(usize),
    /// One of these; labels are the sentences `choice.<name>`.
    Choice(&'static [&'static str]),
    /// A day.
    Date,
    /// A zone of the cap.
    Zone,
    /// A lot of the workshop.
    Lot,
    /// Yes or no.
    YesNo,
    /// Zones of the cap; none named is all of them.
    Zones,
    /// A photo, by the hash of its bytes.
    Photo,
    /// A colour.
    Shade,
    /// Colours along the length.
    Along,
    /// A step of the wig's plan of work.
    Step,
    /// What is planned for a step; never typed.
    Planned,
}

/// What a field was filled with.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Value {
    /// A figure as typed.
    Quantity(Typed),
    /// Money.
    Money(Money),
    /// A whole number.
    Count(u32),
    /// Words.
    Text(String),
    /// One of the field's choices.
    Choice(&'static str),
    /// A day.
    Date(Date),
    /// A zone.
    Zone(Zone),
    /// A lot.
    Lot(LotId),
    /// Yes or no.
    YesNo(bool),
    /// Zones.
    Zones(Zones),
    /// A photo.
    Photo(PhotoId),
    /// A colour.
    Shade(Shade),
    /// Colours along the length.
    Along(Along),
    /// A step.
    Step(StepId),
    /// What is planned for a step.
    Planned(Box<Planned>),
}

impl Holds {
    /// Reads what a person typed or a file holds; a bare number takes the person's usual unit.
    ///
    /// # Errors
    /// A sentence with the value, the reason and the remedy.
    pub fn read(&self, text: &str, prefs: &Prefs) -> Result<Value, Say> {
        let bare = text.trim();
        if bare.is_empty() {
            return Err(ReadError::Empty.say(text));
        }
        let refused = |key| Say::new(key, [Arg::from(bare)]);
        match self {
            Holds::Quantity(limit) => quantity(bare, limit, prefs).map(Value::Quantity),
            Holds::AnyOf(limits) => any_of(bare, limits, prefs).map(Value::Quantity),
            Holds::Money => Money::read(bare).map(Value::Money).map_err(|reason| reason.say(bare)),
            Holds::Count(low, high) => match bare.parse::<u32>() {
                Ok(count) if (*low..=*high).contains(&count) => Ok(Value::Count(count)),
                _ => Err(Say::new(
                    "record.not_a_count",
                    [Arg::from(bare), Arg::Count(i64::from(*low)), Arg::Count(i64::from(*high))],
                )),
            },
            Holds::Text(longest) => {
                let length = bare.chars().count();
                if length > *longest {
                    Err(Say::new("record.text_too_long", [Arg::Count(length as i64), Arg::Count(*longest as i64)]))
                } else {
                    Ok(Value::Text(bare.to_owned()))
                }
            }
            Holds::Choice(choices) => choices
                .iter()
                .find(|choice| **choice == bare)
                .map(|choice| Value::Choice(choice))
                .ok_or_else(|| refused("record.not_a_choice")),
            Holds::Date => Date::read(bare).map(Value::Date).ok_or_else(|| refused("record.not_a_date")),
            Holds::Zone => Zone::read(bare).map(Value::Zone).ok_or_else(|| refused("record.not_a_zone")),
            Holds::Lot => LotId::read(bare).map(Value::Lot).ok_or_else(|| refused("record.not_a_lot")),
            Holds::YesNo => match bare {
                "yes" => Ok(Value::YesNo(true)),
                "no" => Ok(Value::YesNo(false)),
                _ => Err(refused("record.not_yes_no")),
            },
            Holds::Zones => Zones::read(bare).map(Value::Zones).ok_or_else(|| refused("record.not_zones")),
            Holds::Photo => PhotoId::read(bare).map(Value::Photo).ok_or_else(|| refused("record.not_a_photo")),
            Holds::Shade => Shade::read(bare).map(Value::Shade).ok_or_else(|| refused("record.not_a_shade")),
            Holds::Along => Along::read(bare).map(Value::Along).ok_or_else(|| refused("record.not_along")),
            Holds::Step => StepId::read(bare).map(Value::Step).ok_or_else(|| refused("record.not_a_step")),
            Holds::Planned => Err(refused("record.not_a_step")),
        }
    }
}

fn quantity(text: &str, limit: &Limit, prefs: &Prefs) -> Result<Typed, Say> {
    // Nobody chooses a usual unit of time: hours are asked in hours, minutes in minutes.
    let usual = if limit.kind() == Kind::Time { limit.unit } else { prefs.usual(limit.kind()) };
    let typed = Typed::read(text, limit.kind(), usual).map_err(|reason| reason.say(text))?;
    limit.admit(&typed)?;
    Ok(typed)
}

/// Tries each kind; the first one's complaint is the one worth hearing when the unit fits none.
fn any_of(text: &str, limits: &[&'static Limit], prefs: &Prefs) -> Result<Typed, Say> {
    let mut complaint = None;
    for limit in limits {
        match Typed::read(text, limit.kind(), prefs.usual(limit.kind())) {
            Ok(typed) => return limit.admit(&typed).map(|()| typed),
            Err(reason) => complaint = complaint.or(Some(reason)),
        }
    }
    match complaint {
        Some(ReadError::NotAUnit(_)) => {
            let symbols: Vec<&str> = limits.iter().flat_map(|limit| Unit::of(limit.kind())).map(Unit::symbol).collect();
            Err(Say::new("measure.not_a_unit", [Arg::from(text), Arg::Text(symbols.join(", "))]))
        }
        Some(reason) => Err(reason.say(text)),
        None => Err(ReadError::NotANumber.say(text)),
    }
}

impl Value {
    /// As it is stored; reads back to the same value, but for what is planned, which files keep field by field.
    pub fn text(&self) -> String {
        match self {
            Value::Quantity(typed) => typed.text().to_owned(),
            Value::Money(money) => money.plain(),
            Value::Count(count) => count.to_string(),
            Value::Text(text) => text.clone(),
            Value::Choice(choice) => (*choice).to_owned(),
            Value::Date(date) => date.to_string(),
            Value::Zone(zone) => zone.name().to_owned(),
            Value::Lot(lot) => lot.to_string(),
            Value::YesNo(true) => "yes".to_owned(),
            Value::YesNo(false) => "no".to_owned(),
            Value::Zones(zones) => zones.to_string(),
            Value::Photo(photo) => photo.to_string(),
            Value::Shade(shade) => shade.to_string(),
            Value::Along(along) => along.to_string(),
            Value::Step(step) => step.to_string(),
            Value::Planned(planned) => planned.work.kind().name.to_owned(),
        }
    }

    /// The figure, when it is one.
    pub fn typed(&self) -> Option<&Typed> {
        match self {
            Value::Quantity(typed) => Some(typed),
            _ => None,
        }
    }

    /// The choice, when it is one.
    pub fn choice(&self) -> Option<&'static str> {
        match self {
            Value::Choice(choice) => Some(choice),
            _ => None,
        }
    }

    /// The words, when it is words.
    pub fn words(&self) -> Option<&str> {
        match self {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The count, when it is one.
    pub fn count(&self) -> Option<u32> {
        match self {
            Value::Count(count) => Some(*count),
            _ => None,
        }
    }

    /// The colour, when it is one.
    pub fn shade(&self) -> Option<Shade> {
        match self {
            Value::Shade(shade) => Some(*shade),
            _ => None,
        }
    }

    /// The colours along the length, when it is that.
    pub fn along(&self) -> Option<&Along> {
        match self {
            Value::Along(along) => Some(along),
            _ => None,
        }
    }

    /// Yes or no, when it is that.
    pub fn yes(&self) -> Option<bool> {
        match self {
            Value::YesNo(yes) => Some(*yes),
            _ => None,
        }
    }

    /// What is planned, when it is that.
    pub fn planned(&self) -> Option<&Planned> {
        match self {
            Value::Planned(planned) => Some(planned),
            _ => None,
        }
    }
}
