//! try
mod common;
use common::*;
use measure::{say::Words, prefs::Prefs};
use plan::shopping::Job;

#[test]
fn ordinary() {
    let bench = Bench::read("
        name = Try
        fibre = modacrylic
        cap = open_wefted
        size = medium
        target = 1.3
        hairline = glued_strip
        parting = weft_sides
        parting_place = left
        lot A.lot_name = Weft
        lot A.lot_fibre = modacrylic
        lot A.pack_weight = 100 g
        lot A.pack_width = 1 m
        lot A.weft_length = 45 cm
        lot A.pack_price = 18.99
        lot A.use_lot = yes
        due = 2027-03-01
    ");
    let t = std::time::Instant::now();
    let answer = Job::new(bench.state(), bench.lots(), today()).finish().unwrap();
    println!("{:?}", t.elapsed());
    let words = Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH]);
    let prefs = Prefs::default();
    println!("{}", answer.headline.words(&words, &prefs));
    println!("{:?} {:?} cost {:?} order {:?} sewing {}", answer.packs, answer.settle, answer.cost, answer.order_by, prefs.time(answer.sewing));
    for line in &answer.lines { println!("  {}: {}", line.name.words(&words, &prefs), line.sum.words(&words, &prefs)); }
    for c in &answer.cautions { println!("! {} {}", c.what.words(&words, &prefs), c.remedy.words(&words, &prefs)); }
    for z in &answer.likely.prepared.fullness.zones { let d=z.depths(&[]); println!("{:?} area {:.0} bought {} now {} target {} reached {:.0} mid {} ends {} ", z.zone, z.area.get::<measure::quantity::units::square_centimeter>(), prefs.fullness(z.bought), prefs.fullness(z.now()), prefs.fullness(z.target), answer.reached[z.zone as usize].get::<measure::quantity::units::per_square_centimeter>(), prefs.fullness(d.middle), prefs.fullness(d.ends)); }
    for r in &answer.likely.prepared.placement.rows { println!("{:?} gap {} at {} {:?} len {} part {} {:?}", r.section, r.gap, prefs.length(r.at), r.mount, prefs.length(r.length), r.part, r.zones.iter().map(|z| z.0).collect::<Vec<_>>()); }
    for r in &answer.reach { println!("{} packs: {:.2}x rows {} lack {}", r.packs, r.times, prefs.run(r.for_rows), prefs.run(r.lacking)); }
    for l in &answer.laid { println!("{:?}", l); }
    println!("rows base {} gaps {}", answer.likely.prepared.layout.rows.len(), answer.likely.prepared.layout.gaps.len());
}
