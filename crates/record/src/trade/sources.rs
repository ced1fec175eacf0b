//! Where the tables' figures come from.
//!
//! What it is: one row per source. What it is not: a claim that a source was read where it says recalled.

use super::fact::{Known, Source};

/// Common practice.
pub const PRACTICE: Source = Source { text: "common practice, no source", known: Known::Practice };

/// Our own judgement.
pub const JUDGED: Source = Source { text: "our own judgement, no source", known: Known::Judged };

/// Head measures by girth.
pub const MESH: Source = Source {
    text: "computed on the averaged scalp mesh that MNE-Python carries (fsaverage), scaled to the girth, hairline drawn by hand; ±8 %",
    known: Known::Computed,
};

/// Trade size charts.
pub const CHARTS: Source = Source {
    text: "wig makers' size charts compared (three charts and a workshop's averages), scaled to the girth",
    known: Known::Computed,
};

/// Doll-hair fineness.
pub const US5083967: Source = Source {
    text: "US patent 5083967 (10 to 100 denier for doll hair) and common practice for wigs",
    known: Known::Read,
};

/// Polyester fineness.
pub const JP202416312: Source = Source {
    text: "Japanese patent application 2024-16312 (20 dtex and up) and common practice for wigs",
    known: Known::Read,
};

/// Hair fineness.
pub const HAIR_DIAMETER: Source = Source {
    text: "computed from hair diameters of 57 to 86 µm (Erik 2008; Jeong 2011) and a density of 1.32 g/cm³",
    known: Known::Computed,
};

/// Wig weights by length.
pub const WEIGHT_TABLE: Source = Source {
    text: "computed from a trade table of whole-wig weight by length at 130 %: 8.27 g an inch and 30 g for the cap",
    known: Known::Computed,
};

/// Hairs on the root side of a knot or stitch.
pub const PUPIL: Source = Source { text: "ventilating practice: a root turn-over of about 1 in", known: Known::Read };

const fn read(text: &'static str) -> Source {
    Source { text, known: Known::Read }
}

const fn recalled(text: &'static str) -> Source {
    Source { text, known: Known::Recalled }
}

// Heat of synthetic fibres.

/// Textile handbooks at large.
pub const HANDBOOKS: Source = recalled("recalled from textile handbooks, not read again");
/// Transitions of polymers.
pub const POLYMER_HANDBOOK: Source = recalled("Polymer Handbook, recalled");
/// Softening of polyester.
pub const COOK: Source = recalled("Cook, Handbook of Textile Fibres, recalled");
/// Transitions of polyamide 6.6.
pub const KOHAN: Source = recalled("Kohan 1995, recalled");
/// Modacrylic, one type.
pub const ZHANG: Source = read("Zhang et al., Textile Research Journal 2006, doi 10.1177/0040517506061959");
/// Modacrylic in museums.
pub const MUSEUM_MODACRYLIC: Source = read("a museum's conservation materials database, modacrylic");
/// Vinylidene in museums.
pub const MUSEUM_VINYLIDENE: Source = read("a museum's conservation materials database, vinylidene fibre");
/// Modacrylic, supplier's figures.
pub const MODACRYLIC_MAKER: Source = read("a modacrylic fibre supplier's page: 250 °F and 300 °F");
/// Modacrylic spinning.
pub const SPINNERET: Source = read("paper on modacrylic spinnerets, part III, abstract");
/// Ironing of garments.
pub const GARMENT_CARE: Source = read("a garment care article: 240 °F");
/// Setting of wig goods.
pub const US5954062: Source = read("US patent 5954062, background");
/// Heat-setting of textiles.
pub const SETTING_TABLE: Source = read("heat-setting table copied on the web from an industry reference book");
/// Heat-setting of textiles, wet.
pub const SETTING_METHODS: Source = read("web article on heat-setting methods");
/// Polyester types compared.
pub const POLYESTERS: Source = read("comparison table of PET, PTT and PBT fibres (Taiwan)");
/// Heats of fibres.
pub const MORTON_HEARLE: Source =
    read("Morton and Hearle, Physical Properties of Textile Fibres, 4th ed. 2008, section 6.2");
/// Vinyl chloride fibre.
pub const CHLOROFIBRE_ARTICLE: Source = read("encyclopaedia article on vinyl chloride fibre, itself without a source");
/// Vinyl chloride fibre in boiling water.
pub const SOVIET_ENCYCLOPEDIA: Source = read("Great Soviet Encyclopedia 1979, chlorofibre");
/// Vinylidene chloride.
pub const VINYLIDENE_ARTICLE: Source = read("encyclopaedia article on polyvinylidene chloride");
/// Polyamide 6, transition.
pub const SONIC: Source = read("paper on the sonic modulus of polyamide 6, abstract");
/// Polyamide, setting.
pub const JANAS: Source = read("Janas, J. Soc. Dyers and Colourists 1970");
/// Polypropylene in the trade.
pub const POLYPROPYLENE_TRADE: Source = read("a fibre trade portal and a staple maker's page, polypropylene");
/// Polypropylene fabric under heat.
pub const POLYPROPYLENE_PATENT: Source = read("a US patent quoted on a question-and-answer page, polypropylene fabric");
/// Polypropylene, setting.
pub const POLYPROPYLENE_SETTING: Source = read("heat-setting study of single polypropylene fibres, abstract");

// Heat of human hair.

/// Dry transition of hair.
pub const WORTMANN: Source = read("Wortmann et al., Biopolymers 81:371 (2006)");
/// Hair's set and moisture.
pub const HARPER: Source = read("Harper, Qi and Kaplan, J. Cosmetic Science 62:139 (2011)");
/// Hair under a dryer.
pub const LEE: Source = read("Lee et al., Annals of Dermatology 23:455 (2011)");
/// Hair under an iron.
pub const MCMULLEN: Source = read("McMullen and Jachowicz 1998");
/// Heat and hair's structure.
pub const IJCS_1984: Source = read("International Journal of Cosmetic Science 6:201 (1984)");
/// Curl lost under heat.
pub const JCS_2013: Source = read("J. Cosmetic Science 64 (2013) p. 125");
/// Pores and melting under an iron.
pub const JCS_2011: Source = read("J. Cosmetic Science 62 (2011) p. 119");
/// Denaturation in water.
pub const HAIR_TEXT: Source = read("TRI text on hair, chapter 11");
/// Denaturation of dry hair.
pub const WORTMANN_DRY: Source = recalled("Wortmann, recalled");
/// Sulphur bonds in the bath.
pub const WOOL_ESSAY: Source = read("Galafassi, essay on wool dyeing");

/// Wet hair under an iron bubbles and buckles.
pub const RUETSCH: Source = read("Ruetsch and Kamath 2004");

// Dye and solvent.

/// Dye of modacrylic.
pub const MODACRYLIC_DYE: Source = read("a dye supplier's page on modacrylic");
/// Dye of polyester without carrier.
pub const SMALL_DYES: Source = read("“Development of dyes and methods for dyeing polyester”, abstract");
/// Polyester at high temperature.
pub const HIGH_TEMPERATURE: Source = read("textile blog and dye process page, disperse dye at high temperature");
/// Dye of polyamide.
pub const POLYAMIDE_DYE: Source = read("two process pages on acid dye for polyamide");
/// Dye classes and fibres.
pub const BROADBENT: Source = read("Broadbent, Basic Principles of Textile Coloration, SDC 2001, p. 317");
/// Polypropylene refuses dye.
pub const UNDYEABLE: Source = read("paper on isotactic polypropylene, extract: undyeable");
/// Sensitising dyes.
pub const HAUSEN: Source = read("Hausen 1993; Uter 2001");
/// Dust of dyes.
pub const HSE: Source = read("UK Health and Safety Executive on dyes; NIOSH 97-107");
/// Patch tests.
pub const PATCH_TEST: Source = read("NHS advice by way of a secondary page; Coenraads 2018");
/// Flash points.
pub const FLASH: Source = recalled("recalled from safety data sheets; read the one of your bottle");

// Curl, conduction and burns.

/// Turns of a wave and a curl.
pub const STYLING_TEXT: Source = recalled("a cosmetology textbook: 1½ turns for a wave, 2½ for a curl; recalled");
/// Densities and specific heats of fibres.
pub const FIBRE_TABLES: Source =
    read("Morton and Hearle, Physical Properties of Textile Fibres, 4th ed. 2008, Tables 5.1 and 6.1; the rest judged");
/// Conductivity of keratin.
pub const FIBRE_CONDUCTION: Source =
    read("Baxter, Proc. Phys. Soc. 58:105 (1946), abstract; Morton and Hearle 2008, Tables 5.1 and 6.1");
/// Heat transfer coefficients.
pub const CONDUCTION_TEXT: Source = read("notes after Çengel, heat transfer: free and forced gas, free liquid");
/// Boiling and steam.
pub const STEAM_TABLES: Source =
    Source { text: "computed: IAPWS-IF97 equation 31 and the standard atmosphere of ISO 2533", known: Known::Computed };
/// Scalds.
pub const SCALDS: Source =
    read("scald tables after Moritz and Henriques 1947, and PLoS ONE 0254790 (2021): the shorter time");
/// Burns by contact.
pub const CONTACT_BURNS: Source = recalled("EN ISO 13732-1, recalled; a mailing list’s table agrees for one second");
/// Curl geometry.
pub const GEOMETRY: Source =
    Source { text: "computed: geometry of helix, circular arc and wound layer", known: Known::Computed };
/// Conduction.
pub const CONDUCTION: Source =
    Source { text: "computed: transient conduction in a wound layer, the slow bound", known: Known::Computed };
// The bath.

/// Depth of acid dye.
pub const DEPTH_ACID: Source =
    read("US patent 5925149 (0.1 to 5 % on the weight of fibre) and a wool dye supplier's guidance");
/// Depth of disperse dye.
pub const DEPTH_DISPERSE: Source =
    read("textile blogs on disperse dye (2 to 3 %); the paler depths and black recalled from textile practice");
/// Strength of dyes.
pub const STRENGTHS: Source = Source {
    text: "our own judgement from the depths above, no source: dyes differ by two to four times, a test lock settles it",
    known: Known::Judged,
};
/// Wetting out.
pub const BROADBENT_WETTING: Source = read("Broadbent, Basic Principles of Textile Coloration, SDC 2001, p. 318");
/// Acid and starting temperature of polyamide baths.
pub const ACETIC_POLYAMIDE: Source =
    read("two process pages on acid dye for polyamide: acetic acid 1 to 3 % on the weight of fibre, from 40 °C");
/// How fast a bath is heated.
pub const RAMPS: Source = read("textile blog and dye process page: 1 to 1.5 °C a minute");
/// Cooling of acrylic fibre in its bath.
pub const CRACK_MARKS: Source =
    read("AATCC text on acrylic fibre, extract: about 50 °C before rinsing, else crack marks");
