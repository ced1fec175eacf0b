//! Addresses inside the page: `#/wig/<id>/weft`.
//!
//! What it is: hash routes read and written. What it is not: history of its own: the browser keeps that.

use record::{id::WigId, trade::fibres::NAMES};

/// A page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Route {
    /// The list of wigs.
    Wigs,
    /// Starting a wig.
    Start,
    /// A wig's page.
    Wig(WigId, Tab),
    /// All lots.
    Lots,
    /// The fibre drawer.
    Fibres,
    /// One fibre, by its name.
    Fibre(&'static str),
    /// Finding entries again.
    Find,
    /// Opening what was sent; what the address carries is taken out of it by the page.
    Open,
    /// Keeping records safe.
    Safe,
    /// Units.
    Units,
    /// What leaves this device: nothing.
    About,
    /// No such page.
    Missing,
}

/// A page of a wig.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tab {
    /// The cap map.
    Cap,
    /// The base and the head.
    Base,
    /// The look wanted.
    Look,
    /// Weft to buy.
    Weft,
    /// Curl and heat.
    Heat,
    /// Colours and dye baths.
    Colour,
    /// What was done.
    Record,
    /// The sheet for a helper.
    Sheet,
}

impl Tab {
    /// All tabs, in order.
    pub const ALL: [Tab; 8] =
        [Tab::Cap, Tab::Base, Tab::Look, Tab::Weft, Tab::Heat, Tab::Colour, Tab::Record, Tab::Sheet];

    /// Its name in an address; its label is the sentence `tab.<name>`.
    pub fn name(self) -> &'static str {
        match self {
            Tab::Cap => "cap",
            Tab::Base => "base",
            Tab::Look => "look",
            Tab::Weft => "weft",
            Tab::Heat => "heat",
            Tab::Colour => "colour",
            Tab::Record => "record",
            Tab::Sheet => "sheet",
        }
    }
}

impl Route {
    /// Reads an address.
    pub fn read(hash: &str) -> Route {
        let path = hash.trim_start_matches('#').trim_start_matches('/');
        let parts: Vec<&str> = path.split('/').filter(|part| !part.is_empty()).collect();
        match parts.as_slice() {
            [] => Route::Wigs,
            ["start"] => Route::Start,
            ["lots"] => Route::Lots,
            ["fibres"] => Route::Fibres,
            ["fibres", name] => NAMES.iter().find(|one| *one == name).map_or(Route::Missing, |name| Route::Fibre(name)),
            ["find"] => Route::Find,
            ["open"] | ["open", _] => Route::Open,
            ["safe"] => Route::Safe,
            ["units"] => Route::Units,
            ["about"] => Route::About,
            ["wig", id] => WigId::read(id).map_or(Route::Missing, |wig| Route::Wig(wig, Tab::Cap)),
            ["wig", id, tab] => match (WigId::read(id), Tab::ALL.into_iter().find(|one| one.name() == *tab)) {
                (Some(wig), Some(tab)) => Route::Wig(wig, tab),
                _ => Route::Missing,
            },
            _ => Route::Missing,
        }
    }

    /// Writes it.
    pub fn href(self) -> String {
        match self {
            Route::Wigs | Route::Missing => "#/".to_owned(),
            Route::Start => "#/start".to_owned(),
            Route::Lots => "#/lots".to_owned(),
            Route::Fibres => "#/fibres".to_owned(),
            Route::Fibre(name) => format!("#/fibres/{name}"),
            Route::Find => "#/find".to_owned(),
            Route::Open => "#/open".to_owned(),
            Route::Safe => "#/safe".to_owned(),
            Route::Units => "#/units".to_owned(),
            Route::About => "#/about".to_owned(),
            Route::Wig(wig, tab) => format!("#/wig/{wig}/{}", tab.name()),
        }
    }

    /// The address the browser shows now.
    pub fn now() -> Route {
        let hash = web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default();
        Route::read(&hash)
    }

    /// Goes there.
    pub fn go(self) {
        if let Some(window) = web_sys::window()
            && window.location().set_hash(&self.href()).is_err()
        {
            // The address stays as it is; the person can still use the links.
            crate::shell::js::focus_id("app");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use record::id::Id;

    #[test]
    fn addresses_read_back() {
        let wig = WigId(Id::from_bytes([9; 16]));
        for route in [
            Route::Wigs,
            Route::Start,
            Route::Lots,
            Route::Fibres,
            Route::Fibre("polyester"),
            Route::Find,
            Route::Open,
            Route::Safe,
            Route::Units,
            Route::About,
        ] {
            assert_eq!(Route::read(&route.href()), route);
        }
        for tab in Tab::ALL {
            assert_eq!(Route::read(&Route::Wig(wig, tab).href()), Route::Wig(wig, tab));
        }
        assert_eq!(Route::read("#/open/0habc"), Route::Open);
        for odd in ["#/wig/zz", "#/wig/zz/cap", "#/nowhere", "#/wig/1/2/3", "#/fibres/wool"] {
            assert_eq!(Route::read(odd), Route::Missing, "{odd}");
        }
    }
}
