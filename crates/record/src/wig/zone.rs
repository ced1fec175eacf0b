//! The zones of a cap.
//!
//! What it is: their names and how they lie. What it is not: their size, which the dome gives.

/// A zone of the cap; left and right are the wearer's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Zone {
    /// The strip behind the front edge, temple to temple.
    FrontHairline,
    /// The strip along the parting.
    Part,
    /// Between hairline strip and ear-to-ear line.
    Top,
    /// Behind the ear-to-ear line, above the back.
    Crown,
    /// Left of the wearer, in front of and above the ear.
    LeftSide,
    /// Right of the wearer, in front of and above the ear.
    RightSide,
    /// Round the back of the head.
    Back,
    /// Below the back, to the neck edge.
    Nape,
}

impl Zone {
    /// All zones, from the front backwards.
    pub const ALL: [Zone; 8] = [
        Zone::FrontHairline,
        Zone::Part,
        Zone::Top,
        Zone::Crown,
        Zone::LeftSide,
        Zone::RightSide,
        Zone::Back,
        Zone::Nape,
    ];

    /// Its name in files; its label is the sentence `zone.<name>`.
    pub fn name(self) -> &'static str {
        match self {
            Zone::FrontHairline => "front_hairline",
            Zone::Part => "part",
            Zone::Top => "top",
            Zone::Crown => "crown",
            Zone::LeftSide => "left_side",
            Zone::RightSide => "right_side",
            Zone::Back => "back",
            Zone::Nape => "nape",
        }
    }

    /// Key of its label.
    pub fn label(self) -> &'static str {
        match self {
            Zone::FrontHairline => "zone.front_hairline",
            Zone::Part => "zone.part",
            Zone::Top => "zone.top",
            Zone::Crown => "zone.crown",
            Zone::LeftSide => "zone.left_side",
            Zone::RightSide => "zone.right_side",
            Zone::Back => "zone.back",
            Zone::Nape => "zone.nape",
        }
    }

    /// Reads a name.
    pub fn read(text: &str) -> Option<Zone> {
        Zone::ALL.into_iter().find(|zone| zone.name() == text)
    }
}

/// Some zones of a cap, at least one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Zones(u8);

impl Zones {
    /// All of them.
    pub const ALL: Zones = Zones(0xff);

    /// One zone.
    pub fn one(zone: Zone) -> Zones {
        Zones(1 << zone as u8)
    }

    /// These and one more.
    #[must_use]
    pub fn and(self, zone: Zone) -> Zones {
        Zones(self.0 | 1 << zone as u8)
    }

    /// Whether a zone is among them.
    pub fn has(self, zone: Zone) -> bool {
        self.0 & 1 << zone as u8 != 0
    }

    /// Whether any zone is in both.
    pub fn meets(self, other: Zones) -> bool {
        self.0 & other.0 != 0
    }

    /// Those among them, from the front backwards.
    pub fn each(self) -> impl Iterator<Item = Zone> {
        Zone::ALL.into_iter().filter(move |zone| self.has(*zone))
    }

    /// Reads names with a space between; none or an unheard-of one is no answer.
    pub fn read(text: &str) -> Option<Zones> {
        let mut zones = None;
        for name in text.split_whitespace() {
            let zone = Zone::read(name)?;
            zones = Some(zones.map_or(Zones::one(zone), |zones: Zones| zones.and(zone)));
        }
        zones
    }
}

impl core::fmt::Display for Zones {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let mut between = "";
        for zone in self.each() {
            f.write_str(between)?;
            f.write_str(zone.name())?;
            between = " ";
        }
        Ok(())
    }
}
