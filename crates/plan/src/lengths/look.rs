//! The finished look of a zone: how long it hangs, how it falls.
//!
//! What it is: the look's slots as geometry, or which of them cannot be. What it is not: what base and weft have.

use measure::{
    quantity::{Length, Ratio, units::ratio},
    say::Arg,
};
use record::{
    history::entry::Of,
    trade::{curl, fact::Sure, sources::GEOMETRY},
    wig::{
        figure::{Figure, Origin},
        figures::Wig,
        zone::Zone,
    },
};

use super::{
    helix::Helix,
    said::{Problem, choice, figure, said},
    wave::Wave,
};

/// How a zone falls.
#[derive(Clone, Debug, PartialEq)]
pub enum Fall {
    /// Straight.
    Straight,
    /// Flat waves.
    Wave {
        /// Of its bends.
        diameter: Figure<Length>,
        /// The wave.
        wave: Wave,
    },
    /// Curls.
    Curl {
        /// Of the curl.
        diameter: Figure<Length>,
        /// From turn to turn.
        pitch: Length,
        /// The curl.
        helix: Helix,
    },
}

impl Fall {
    /// Hanging over straight length.
    pub fn share(&self) -> f64 {
        match self {
            Fall::Straight => 1.0,
            Fall::Wave { wave, .. } => wave.share(),
            Fall::Curl { helix, .. } => helix.share(),
        }
    }

    /// How wide the finished bend is.
    pub fn diameter(&self) -> Option<&Figure<Length>> {
        match self {
            Fall::Straight => None,
            Fall::Wave { diameter, .. } | Fall::Curl { diameter, .. } => Some(diameter),
        }
    }
}

/// From turn to turn, of turns of a diameter that take so much straight length each; nothing of it where that is too little.
fn of_turns(diameter: Length, each: Length) -> Length {
    let round = diameter * core::f64::consts::PI;
    let square = each.value * each.value - round.value * round.value;
    Length::new::<measure::quantity::units::meter>(libm::sqrt(square.max(0.0)))
}

/// What a test curl showed: hanging over straight length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TestCurl {
    /// Straight.
    pub straight: Length,
    /// Hanging.
    pub hangs: Length,
}

impl TestCurl {
    /// That of a wig, where both lengths were said and go together.
    pub fn of(wig: &Wig<'_>) -> Option<TestCurl> {
        let length = |slot| said::<Length>(wig, slot, Of::Wig).map(|figure| figure.likely);
        let test = TestCurl { straight: length("test_straight")?, hangs: length("test_hangs")? };
        (test.hangs < test.straight).then_some(test)
    }

    /// Hanging over straight length.
    pub fn share(&self) -> f64 {
        (self.hangs / self.straight).get::<ratio>()
    }
}

/// The look of a zone.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneLook {
    /// The zone.
    pub zone: Zone,
    /// How long it hangs.
    pub hangs: Figure<Length>,
    /// How long its shortest layer hangs, where said.
    pub shortest: Option<Length>,
    /// How far from the root it starts to curl.
    pub start: Length,
    /// How it falls from there.
    pub fall: Fall,
    /// The test curl that stands for all geometry.
    pub test: Option<TestCurl>,
}

impl ZoneLook {
    /// Reads a zone's look.
    ///
    /// # Errors
    /// The field that cannot be.
    pub fn of(wig: &Wig<'_>, zone: Zone) -> Result<ZoneLook, Problem> {
        let of = Of::Zone(zone);
        let mut hangs = wig.look_length(zone);
        let shortest = said::<Length>(wig, "look_shortest", of).map(|figure| figure.likely);
        if let Some(shortest) = shortest
            && shortest > hangs.likely
        {
            return Err(Problem::new(
                "look_shortest",
                of,
                "lengths.shortest_longer",
                [Arg::Length(shortest), Arg::Length(hangs.likely)],
            ));
        }
        let kind = choice(wig, "curl", of).unwrap_or("straight");
        let start = said::<Length>(wig, "curl_start", of).map_or(hangs.likely * 0.0, |figure| figure.likely);
        // Where nobody said how long it is to hang, it hangs as long as the base's strands do in this look.
        let open = kind != "straight" && !hangs.origin.is_said();
        let curled = hangs.likely - start;
        if kind != "straight" && curled <= hangs.likely * 0.0 {
            return Err(Problem::new(
                "curl_start",
                of,
                "lengths.starts_beyond",
                [Arg::Length(start), Arg::Length(hangs.likely)],
            ));
        }
        let diameter: Figure<Length> = figure(wig, "curl_diameter", of, &curl::CURL);
        let turns = said::<Ratio>(wig, "curl_turns", of).map(|turns| turns.likely.get::<ratio>());
        let pitch = said::<Length>(wig, "curl_pitch", of)
            .map(|pitch| pitch.likely)
            .or(turns.map(|n| if open { of_turns(diameter.likely, curled / n) } else { curled / n }));
        let fall = match kind {
            "wave" => {
                let crest = pitch.unwrap_or(diameter.likely * curl::WAVE.likely);
                let Some(wave) = Wave::new(diameter.likely, crest) else {
                    return Err(Problem::new(
                        "curl_pitch",
                        of,
                        "lengths.wave_too_long",
                        [Arg::Gap(crest), Arg::Gap(diameter.likely), Arg::Gap(diameter.likely * 2.0)],
                    ));
                };
                Fall::Wave { diameter, wave }
            }
            "curl" => {
                let pitch = pitch.unwrap_or(diameter.likely * curl::PITCH.likely);
                let Some(helix) = Helix::new(diameter.likely, pitch) else {
                    return Err(Problem::new("curl_pitch", of, "lengths.no_curl", [Arg::Gap(pitch)]));
                };
                Fall::Curl { diameter, pitch, helix }
            }
            _ => Fall::Straight,
        };
        let mut look = ZoneLook { zone, hangs: hangs.clone(), shortest, start, fall, test: TestCurl::of(wig) };
        if open {
            hangs = Figure {
                low: look.hangs_of(hangs.low),
                likely: look.hangs_of(hangs.likely),
                high: look.hangs_of(hangs.high),
                origin: Origin::Follows { slot: "longest", source: &GEOMETRY, sure: Sure::Medium },
            };
            look.hangs = hangs;
        }
        Ok(look)
    }

    /// Whether it is curled or waved.
    pub fn is_curled(&self) -> bool {
        self.fall != Fall::Straight
    }

    /// Hanging over straight length of what is curled.
    pub fn share(&self) -> f64 {
        match self.test {
            Some(test) if self.is_curled() => test.share(),
            _ => self.fall.share(),
        }
    }

    /// The straight length that hangs so long in this look; what hangs above the curl's start is straight.
    pub fn straight(&self, hangs: Length) -> Length {
        if hangs <= self.start { hangs } else { self.start + (hangs - self.start) / self.share() }
    }

    /// How long a straight length hangs in this look.
    pub fn hangs_of(&self, straight: Length) -> Length {
        if straight <= self.start { straight } else { self.start + (straight - self.start) * self.share() }
    }
}
