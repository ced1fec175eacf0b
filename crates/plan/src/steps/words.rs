//! The English of the guides: when a step is right, and when to stop and ask.
//!
//! What it is: a part of this crate’s table, apart because it is long. What it is not: code.

use measure::say::Table;

/// Keys and sentences; common practice, no source. Makers’ labels come first.
pub const GUIDES: Table = &[
    (
        "guide.base_right",
        "Right when fall, state and colour of the base are written down before anything is done to it.",
    ),
    ("guide.base_stop", "Stop and ask if it smells, sheds by the handful, or is not the fibre its label says."),
    ("guide.measure_right", "Right when the same figure comes out twice."),
    ("guide.measure_stop", "Stop and ask if two goes differ by more than half a centimetre."),
    ("guide.block_right", "Right when the cap lies flat with no pull and the pins hold at every edge."),
    (
        "guide.block_stop",
        "Stop and ask if the cap must be stretched to fit the block, or the block is a smaller head than the wearer’s.",
    ),
    ("guide.wash_right", "Right when the water runs clear and the fibre feels clean, not coated."),
    ("guide.wash_stop", "Stop and ask if colour runs, the fibre mats, or glue at the edge turns soft."),
    ("guide.straighten_right", "Right when a lock falls straight and stays so once it is cold and dry."),
    (
        "guide.straighten_stop",
        "Stop and ask if the fibre shrinks, shines, sticks or smells, or you have no test lock of this fibre.",
    ),
    (
        "guide.sew_weft_right",
        "Right when the row lies flat, no stitch shows from above, and a light tug moves nothing.",
    ),
    (
        "guide.sew_weft_stop",
        "Stop and ask if the weft runs out before the row ends, its colour is off beside its neighbour, or the row stands up as a shelf.",
    ),
    ("guide.unpick_right", "Right when every thread is out and the cap is whole."),
    ("guide.unpick_stop", "Stop and ask if the cap tears, or weft comes off that was to stay."),
    ("guide.edge_right", "Right when no edge shows at arm’s length and the hair falls the way it should grow."),
    (
        "guide.edge_stop",
        "Stop and ask if lace frays or tears, knots slip, or the edge is thicker than the hair behind it.",
    ),
    ("guide.glue_right", "Right when the glue has cured as its label says and holds a light tug."),
    (
        "guide.glue_stop",
        "Stop and ask if skin reddens or itches, your head aches, or a flame or hot tool is near. The label comes first.",
    ),
    ("guide.refront_right", "Right when the new front lies flat to the skin and its knots hold a comb."),
    ("guide.refront_stop", "Stop and ask if the lace does not match the cap’s curve or knots slip out."),
    ("guide.gather_right", "Right when every lock is bound evenly, with its points tucked in and no pull at the root."),
    ("guide.gather_stop", "Stop and ask if a dye bath is still to come: bound fibre stays undyed inside."),
    ("guide.release_right", "Right when all of it is cold, and dry if it was wet, before the first lock is let go."),
    ("guide.release_stop", "Stop and ask if the first lock falls out of its shape: leave the rest bound."),
    ("guide.rinse_right", "Right when the water runs clear."),
    ("guide.rinse_stop", "Stop and ask if colour still runs after several changes of water."),
    ("guide.dry_right", "Right when it is dry at the root and inside the thickest lock, not only outside."),
    ("guide.dry_stop", "Stop and ask if the dryer’s air is hotter than this fibre may have, or the cap smells musty."),
    (
        "guide.heat_set_right",
        "Right when the middle of the thickest lock reached the heat, and a lock let go when cold keeps its shape.",
    ),
    (
        "guide.heat_set_stop",
        "Stop and ask if the fibre shrinks, shines or sticks, the thermometer reads more than the sheet, or somebody is wearing it. The label comes first.",
    ),
    ("guide.dye_right", "Right when a dried lock matches the test lock in daylight."),
    (
        "guide.dye_stop",
        "Stop and ask if the bath is hotter than the sheet says, the fibre takes no dye, or dust or fumes reach you. The dye’s label comes first.",
    ),
    (
        "guide.colour_lock_right",
        "Right when the lock is rinsed clear and dry and its colour is written down beside its depth.",
    ),
    (
        "guide.colour_lock_stop",
        "Stop and ask if the lock shrinks, sticks or takes nothing: the bath would do the same.",
    ),
    ("guide.count_dye_right", "Right when the packet’s own weight is off and its label says the day."),
    ("guide.count_dye_stop", "Stop and ask if there is more than was bought: it was weighed wrong once."),
    ("guide.test_lock_right", "Right when the hidden lock is cold and dry and what it shows is written down."),
    ("guide.test_lock_stop", "Stop and ask if it melts, sticks or smells: nothing hotter is tried on this fibre."),
    ("guide.cut_right", "Right when both sides are alike and nothing is shorter than the sheet says, curl counted in."),
    ("guide.cut_stop", "Stop and ask if a curl is still to be set and the length left for it is not written down."),
    ("guide.product_right", "Right when the fibre holds, shows no beads, and has dried."),
    (
        "guide.product_stop",
        "Stop and ask if a dye bath or a hot tool is still to come, or a flame is near. The label comes first.",
    ),
    (
        "guide.dress_right",
        "Right when it looks like its picture from front, sides and back, and stays so when it is shaken.",
    ),
    ("guide.dress_stop", "Stop and ask if fibre comes out in the comb, or heat would be used while somebody wears it."),
    ("guide.accessory_right", "Right when it holds a shake and scratches neither skin nor cap."),
    ("guide.accessory_stop", "Stop and ask if its weight pulls the cap, or the glue for it needs heat."),
    ("guide.anchor_right", "Right when the wig stays put while the wearer nods and turns."),
    ("guide.anchor_stop", "Stop and ask if anything presses, pulls at own hair, or has a sharp end."),
    ("guide.wig_prep_right", "Right when own hair lies flat and nothing stands up under the wig cap."),
    ("guide.wig_prep_stop", "Stop and ask if the scalp is sore or the skin is broken."),
    ("guide.fitting_right", "Right when it sits without a pull, shows no edge, and stays put when the wearer moves."),
    ("guide.fitting_stop", "Stop and ask if it pulls, hurts or slips, or skin reddens. No heat while it is worn."),
    ("guide.worn_right", "Right when how often and how long is written down, with what came loose."),
    ("guide.worn_stop", "Stop and ask if the wearer has itching skin or a headache, or the edge lifts."),
    ("guide.reset_right", "Right when it looks as in its picture again, and is cold and dry."),
    ("guide.reset_stop", "Stop and ask if the shape no longer comes back: it needs a new set, not more heat."),
    (
        "guide.disinfect_right",
        "Right when the cap was wetted all over for as long as the label says, rinsed, and dried through.",
    ),
    (
        "guide.disinfect_stop",
        "Stop and ask if the label does not allow this fibre, cap or glue, or the spray is flammable and heat is near.",
    ),
    ("guide.repair_right", "Right when the place holds a light tug and cannot be seen from outside."),
    ("guide.repair_stop", "Stop and ask if the cap itself gives way beside the stitches."),
    ("guide.store_right", "Right when it is clean, dry, supported, and out of sun and dust."),
    ("guide.store_stop", "Stop and ask if it is damp, or lies where it is squeezed."),
    ("guide.hand_over_right", "Right when whoever takes it has its sheet and knows when it is wanted back."),
    (
        "guide.hand_over_stop",
        "Stop and ask if glue or dye is not yet cured or dry, or it was not disinfected after another wearer.",
    ),
    ("guide.photo_right", "Right when the whole of it can be seen in even light."),
    ("guide.photo_stop", "Stop and ask if somebody can be recognised who did not agree to it."),
    ("guide.count_right", "Right when whole packs and the longest open length were counted by hand."),
    ("guide.count_stop", "Stop and ask if the dye lot on a label is not the one written down."),
    ("guide.note_right", "Right when somebody else would understand it next year."),
    ("guide.note_stop", "Stop and ask if it names what a wearer would want kept private."),
];
