"""One take-off of every method and more of those with branches, in feet and in metres: for laws that all must hold."""

from __future__ import annotations

from fractions import Fraction

from builder.journal.records.takeoff_entry import SizedFind
from tests.takeoff.writing import Written

FINDS = (
    SizedFind(line="sash", what="Window", width=Fraction("0.6096"), height=Fraction("1.2192"), count=2),
    SizedFind(line="wide", what="Wide window", width=Fraction("3.048"), height=Fraction("1.2192"), count=1),
)

CORPUS: list[tuple[str, dict[str, Written]]] = [
    ("level_pad", {"length": "16 ft", "width": "12 ft", "fall": "16 in", "truck": "5 yd3"}),
    ("pit", {"length": "14 ft", "width": "10 ft", "depth": "3 ft"}),
    (
        "pit",
        {
            "length": "14 ft", "width": "10 ft", "depth": "3 ft", "side_slope": "3/4", "workspace": "18 in",
            "swell": "30%", "truck": "7 yd3",
        },
    ),
    ("trench", {"length": "60 ft", "width": "18 in", "depth": "12 in", "waste": "10%"}),
    ("trench", {"length": "60 ft", "width": "18 in", "depth": "12 in", "pipe_diameter": "4 in"}),
    ("drain_run", {"length": "40 ft", "slope": "1/4 in per ft"}),
    ("drain_run", {"length": "40 ft", "slope": "1:48"}),
    ("drain_run", {"length": "12 m", "slope": "1.5%"}),
    ("drain_run", {"length": "12 m", "fall": "18 cm"}),
    ("gravel_bed", {"length": "14 ft", "width": "10 ft", "depth": "4 in", "compaction": "15%", "waste": "5%"}),
    (
        "strip_footing",
        {
            "length": "40 ft 10 in", "width": "30 ft 10 in", "footing_width": "18 in", "thickness": "5 1/2 in",
            "cross_walls": ["20 ft", "2 x 11 ft 3 in"], "bag": "60 lb", "waste": "7.5%",
        },
    ),
    ("slab", {"length": "14 ft", "width": "10 ft", "thickness": "3 1/2 in", "bag": "50 lb", "waste": "8%"}),
    ("slab", {"length": "4.2 m", "width": "3 m", "thickness": "100 mm", "bag": "25 kg", "bag_yield": "12.5 L"}),
    ("pier", {"diameter": "10 in", "height": "4 ft 6 in", "count": "5", "bag": "80 lb"}),
    ("rebar", {"bar": "4", "runs": ["42 ft", "2 x 12 ft"], "stock_length": "20 ft", "waste": "5%"}),
    ("rebar", {"bar": "5", "runs": "4 x 318 ft", "waste": "10%"}),
    (
        "block_wall",
        {
            "length": "56 ft", "height": "7 ft 10 in", "openings": [["3 ft", "7 ft"], "24 in x 48 in"],
            "corners": "4", "filled_cores": "10", "core_volume": "0.15 ft3", "waste": "5%",
        },
    ),
    ("block_wall", {"length": "20 ft", "courses": "7"}),
    (
        "brick_wall",
        {"length": "20 ft", "height": "4 ft", "brick_length": "7 5/8 in", "brick_height": "2 1/4 in", "waste": "5%"},
    ),
    ("studs", {"length": "31 ft 7 in", "spacing": "16 in", "corners": "3", "waste": "10%"}),
    ("studs", {"length": "48 ft", "spacing": "24 in", "closed": "yes"}),
    (
        "boards",
        {
            "pieces": [
                {"thickness": "3/4 in", "width": "6 in", "length": "7 ft", "count": "9"},
                {"thickness": "2 in", "width": "4 in", "length": "8 ft"},
            ],
            "waste": "10%",
        },
    ),
    (
        "cut_list",
        {
            "pieces": [{"length": "5 ft 1 in", "count": "7"}, {"length": "43 in", "count": "5"}, {"length": "9 in"}],
            "stock": [{"length": "10 ft", "unit_cost": "7.10"}, {"length": "8 ft", "unit_cost": "5.15"}],
        },
    ),
    ("cut_list", {"pieces": {"length": "1.2 m", "count": "9"}, "stock": {"length": "3.6 m"}, "kerf": "3 mm"}),
    ("roof", {"span": "16 ft", "length": "20 ft", "rise": "7 in", "overhang": "12 in", "waste": "8%"}),
    ("roof", {"span": "5 m", "length": "6 m", "rise": "30 deg", "sides": "1"}),
    ("roof", {"span": "5 m", "length": "6 m", "rise": "1:2"}),
    ("rainwater", {"roof_area": "140 ft2", "rainfall": "40 in"}),
    ("openings", {"walls": {"clear_length": "9 ft"}, "units": {"width": "30 in", "count": "4"}, "post": "6 in"}),
    ("openings", {"walls": [{"clear_length": "12 ft"}, {"clear_length": "2 ft"}], "units": "salvaged", "post": "4 in"}),
    ("finish", {"area": "415 ft2", "coats": "2", "waste": "5%"}),
    ("finish", {"area": "20 ft x 20 ft", "coverage": "41 ft2 per roll", "waste": "10%"}),
]  # fmt: skip
IDS = [f"{method}-{at}" for at, (method, _) in enumerate(CORPUS)]
