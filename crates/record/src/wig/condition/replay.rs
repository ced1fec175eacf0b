//! What each kind of work does to a wig.
//!
//! What it is: one arm a kind that changes anything. What it is not: whether it was wise (see the `plan` room's `care`).

use measure::quantity::{ThermodynamicTemperature, units::degree_celsius};

use super::{Condition, Dyed, Glued, Set, Sewn, ZoneCondition, undoes};
use crate::{
    field::Value,
    history::fold::Done,
    wig::{
        figures::Wig,
        work::{Work, sew_weft::SewWeft},
        zone::{Zone, Zones},
    },
};

/// What takes spray, lotion and oil out of fibre; plain water does not.
const CLEANSE: &[&str] = &["mild_shampoo", "disinfecting_wash", "shampoo_only"];

fn back_and_sides() -> Zones {
    Zones::one(Zone::Crown).and(Zone::LeftSide).and(Zone::RightSide).and(Zone::Back).and(Zone::Nape)
}

/// Steam without a figure, °C. Water boils at 100 °C where the air presses as at the sea.
const STEAM: f64 = 100.0;

impl Work {
    /// The zones it was done to: those it names, else those such work lies in, else all.
    pub fn zones(&self) -> Zones {
        match (self.get("zones"), self.get("zone"), self.get("sewn_as").and_then(Value::choice)) {
            (Some(Value::Zones(zones)), _, _) => *zones,
            (_, Some(Value::Zone(zone)), _) => Zones::one(*zone),
            (_, _, Some("hairline")) => Zones::one(Zone::FrontHairline),
            (_, _, Some("parting")) => Zones::one(Zone::Part),
            _ => match self.choice("section") {
                Some("top") => Zones::one(Zone::Top),
                Some("back_and_sides") => back_and_sides(),
                // A row of which nobody said where: most of a cap's rows run there.
                _ if self.kind().name == "sew_weft" => back_and_sides(),
                _ => Zones::ALL,
            },
        }
    }

    /// A choice it was filled with.
    pub fn choice(&self, field: &str) -> Option<&'static str> {
        self.get(field).and_then(Value::choice)
    }

    /// A yes or no it was filled with.
    pub fn yes(&self, field: &str) -> Option<bool> {
        self.get(field).and_then(Value::yes)
    }

    /// How hot it was.
    pub fn temperature(&self) -> Option<ThermodynamicTemperature> {
        self.get("temperature").and_then(Value::typed).and_then(|typed| typed.temperature())
    }

    /// How hot it was; steam of which nobody said is taken as hot as boiling water.
    pub fn heat_or_steam(&self) -> Option<ThermodynamicTemperature> {
        let steam = self.choice("medium") == Some("steam") || self.choice("reset_with") == Some("steam_off_head");
        self.temperature().or_else(|| steam.then(|| ThermodynamicTemperature::new::<degree_celsius>(STEAM)))
    }

    /// Whether only loose weft of a lot went into the dye: it names a lot and no zone.
    pub fn dyes_weft_alone(&self) -> bool {
        self.kind().name == "dye" && self.get("lot").is_some() && self.get("zones").is_none()
    }

    fn words(&self, field: &str) -> Option<String> {
        self.get(field).and_then(Value::words).map(str::to_owned)
    }
}

impl Condition {
    /// What it is like once a piece of work more is done.
    pub fn apply(&mut self, wig: &Wig<'_>, done: &Done) {
        let work = &done.work;
        self.whole(done);
        if work.dyes_weft_alone() {
            return;
        }
        let zones = work.zones();
        let hair = wig.fibre().name == "human_hair";
        let dyed_lot = |lot| self.dyed_lots.iter().any(|(one, _)| Some(*one) == lot);
        let sewn = SewWeft::of(work).map(|weft| Sewn {
            lot: weft.lot,
            length: weft.length,
            lot_dyed: dyed_lot(weft.lot),
            by: done.entry,
        });
        for at in zones.each() {
            if let Some(zone) = self.zones.get_mut(at as usize) {
                one(zone, done, hair, &sewn);
                // Spirit burns where it is put, until it has dried.
                zone.flammable |= spirit_glue_on(work, at);
            }
        }
    }

    /// What holds for the wig as a whole.
    fn whole(&mut self, done: &Done) {
        let work = &done.work;
        let kind = work.kind().name;
        // Whatever is done next, it is no longer away or in its box.
        if !matches!(kind, "photo" | "note") {
            self.stored = None;
            self.handed_to = None;
        }
        // What was glued to skin came off with the wig.
        if matches!(kind, "worn" | "wash" | "disinfect" | "block" | "store" | "hand_over") {
            self.glued.retain(|glued| glued.to != Some("skin"));
        }
        match kind {
            "block" => self.block = work.choice("block"),
            "glue" => {
                let Some(glue) = work.choice("glue") else { return };
                self.glued.push(Glued { glue, to: work.choice("glued_to"), by: done.entry });
            }
            "refront" => self.glued.retain(|glued| glued.to != Some("lace_edge")),
            "unpick" if work.choice("unpicked") == Some("hairline") => {
                self.glued.retain(|glued| glued.to != Some("lace_edge"));
            }
            "unpick" if work.choice("unpicked") == Some("glue") => self.glued.clear(),
            "unpick" if work.choice("unpicked") == Some("accessory") => {
                self.glued.retain(|glued| glued.to != Some("accessory"));
            }
            "dye" => {
                if let Some(Value::Lot(lot)) = work.get("lot") {
                    self.dyed_lots.push((*lot, work.words("dye_batch")));
                }
            }
            "test_lock" => self.test_locks += 1,
            "worn" => {
                self.worn = true;
                self.block = None;
            }
            "fitting" => self.block = None,
            "disinfect" => self.worn = false,
            "store" => {
                self.stored = work.choice("stored");
                if self.stored != Some("on_block") {
                    self.block = None;
                }
            }
            "hand_over" => self.handed_to = work.words("handed_to"),
            _ => {}
        }
    }
}

/// Whether work leaves spirit glue in a zone: none on skin, and that of the lace lies along its edge.
fn spirit_glue_on(work: &Work, zone: Zone) -> bool {
    work.choice("glue") == Some("spirit_glue")
        && match work.choice("glued_to") {
            Some("skin") => false,
            Some("lace_edge") => zone == Zone::FrontHairline,
            _ => true,
        }
}

/// Water on a zone, with what it takes out and undoes.
fn wetted(zone: &mut ZoneCondition, heat: Option<ThermodynamicTemperature>, hair: bool) {
    zone.wet = true;
    zone.flammable = false;
    let undone = zone.set.as_ref().is_some_and(|set| hair || undoes(heat, set.temperature));
    // A bound lock keeps its shape through a bath; it is set anew by it.
    if undone && zone.bound.is_none() {
        zone.set = None;
    }
}

/// A dressing put right.
fn reset(zone: &mut ZoneCondition, work: &Work) {
    match work.choice("reset_with") {
        Some("damp_pins") => {
            zone.wet = true;
            zone.bound = Some("pinned");
        }
        Some("rollers") => zone.bound = Some("rollers"),
        Some("steam_off_head" | "hot_iron") if zone.bound.is_none() => {
            let heat = work.heat_or_steam();
            zone.set = zone.set.take().filter(|set| !undoes(heat, set.temperature));
        }
        _ => {}
    }
}

fn one(zone: &mut ZoneCondition, done: &Done, hair: bool, sewn: &Option<Sewn>) {
    let work = &done.work;
    let heat = work.temperature();
    let failed = work.choice("result") == Some("failed");
    match work.kind().name {
        "base" => zone.texture = work.choice("texture").or(zone.texture),
        // Spirit wets nothing for long, but burns until it has dried.
        "disinfect" if work.choice("disinfected_with") == Some("alcohol_spray") => zone.flammable = true,
        "wash" | "rinse" | "disinfect" => {
            wetted(zone, heat, hair);
            let with = work.choice("washed_with").or(work.choice("disinfected_with"));
            if with.is_some_and(|with| CLEANSE.contains(&with)) {
                zone.products.clear();
            }
        }
        "straighten" => {
            zone.wet = matches!(work.choice("medium"), Some("water" | "steam"));
            zone.set = None;
            if !failed {
                zone.texture = Some("straight");
            }
        }
        "sew_weft" => zone.sewn.extend(sewn.clone()),
        "unpick" => {
            if matches!(work.choice("unpicked"), Some("row" | "hairline" | "parting")) {
                zone.sewn.pop();
            }
        }
        // Common practice, no source: what burns has dried off by the time a wig is on, away or in its box.
        "worn" | "store" | "hand_over" => zone.flammable = false,
        "reset" => reset(zone, work),
        "gather" => zone.bound = work.choice("gathered"),
        "release" => {
            zone.bound = None;
            if let Some(set) = &mut zone.set {
                set.cooled = work.yes("cooled").or(set.cooled);
                if set.cooled == Some(false) {
                    zone.set = None;
                }
            }
            zone.wet &= work.yes("dried") != Some(true);
        }
        "dry" => {
            let damp = work.choice("left") == Some("damp");
            // Hair holds the shape that it dries in.
            let shaped = matches!(zone.bound, Some("rollers" | "pinned" | "braided"));
            if hair && zone.wet && shaped && !damp && zone.set.is_none() {
                let cooled = matches!(work.choice("dry_way"), Some("air" | "towel")).then_some(true);
                zone.set = Some(Set { medium: None, temperature: heat, cooled, by: done.entry });
                zone.texture = None;
            }
            zone.wet = damp;
            zone.flammable = false;
        }
        "cut" | "fitting" => {
            let length = work.get("hair_length").and_then(Value::typed).and_then(|typed| typed.length());
            zone.longest = length.or(zone.longest);
            zone.final_cut |= work.yes("final_cut") == Some(true);
        }
        "product" => {
            if let Some(product) = work.choice("product") {
                zone.products.retain(|one| *one != product);
                zone.products.push(product);
                zone.flammable = work.yes("flammable").unwrap_or(product == "hairspray");
            }
        }
        "heat_set" => {
            let wet = matches!(work.choice("medium"), Some("water" | "steam"));
            zone.wet = wet && work.yes("dried") != Some(true);
            if failed {
                // What failed made no set, but its heat may have undone the one before.
                zone.set = zone.set.take().filter(|set| !undoes(heat, set.temperature));
                return;
            }
            zone.set = Some(Set {
                medium: work.choice("medium"),
                temperature: heat,
                cooled: work.yes("cooled"),
                by: done.entry,
            });
            zone.texture = None;
            // What was wound stays wound until somebody says that it was let go.
            if work.choice("winding").is_some() && zone.bound.is_none() && work.yes("cooled").is_none() {
                zone.bound = Some("rollers");
            }
        }
        "dye" => {
            if matches!(work.choice("dye_way"), None | Some("bath" | "dip")) {
                wetted(zone, heat, hair);
            }
            zone.flammable |= work.choice("dye_class") == Some("pigment_spray");
            zone.undyed_inside = zone.bound.is_some();
            if let Some(class) = work.choice("dye_class").filter(|_| !failed) {
                zone.dyed.push(Dyed {
                    class,
                    batch: work.words("dye_batch"),
                    colour: work.words("colour"),
                    by: done.entry,
                });
            }
        }
        _ => {}
    }
}
