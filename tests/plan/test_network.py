"""The critical path method against published tables and against networkx."""

from __future__ import annotations

from fractions import Fraction

import networkx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.network import FlawedNetworkError, Step, in_order, network_faults, network_times
from builder.plan.time_records import Flaw, NetworkFault, NetworkTimes, StepTimes

# J. Kantor, CBE40455 notebook 04.01 "Critical Path Method" (University of Notre Dame), stadium construction,
# after Gueret, Prins, Sevaux, Applications of Optimization with Xpress-MP (2000), example 7.1.1:
# duration in weeks, predecessors, ES, EF, LS, LF, slack.
STADIUM = """
T01  2 -           0  2  0  2  0
T02 16 T01         2 18  2 18  0
T03  9 T02        18 27 18 27  0
T04  8 T02        18 26 29 37 11
T05 10 T03        27 37 27 37  0
T06  6 T04,T05    37 43 37 43  0
T07  2 T04        26 28 61 63 35
T08  2 T06        43 45 59 61 16
T09  9 T04,T06    43 52 43 52  0
T10  5 T04        26 31 59 64 33
T11  3 T06        43 46 58 61 15
T12  2 T09        52 54 52 54  0
T13  1 T07        28 29 63 64 35
T14  7 T02        18 25 53 60 35
T15  4 T04,T14    26 30 60 64 34
T16  3 T08,T11,T14 46 49 61 64 15
T17  9 T12        54 63 54 63  0
T18  1 T17        63 64 63 64  0
"""

# A. Kucharski, "CPM and PERT" (2024-01-06), vignette of the R package critpath 0.2.2, first example; its arcs
# A 1-2, B 1-3, C 1-4, D 2-4, E 3-4, F 4-5 written as what each comes after: duration, predecessors, ES, EF,
# LS, LF, TF.
VIGNETTE = """
A 3 -     0 3 1 4 1
B 2 -     0 2 2 4 2
C 5 -     0 5 0 5 0
D 1 A     3 4 4 5 1
E 1 B     2 3 4 5 2
F 3 C,D,E 5 8 5 8 0
"""
VIGNETTE_FREE = {"A": 0, "B": 0, "C": 0, "D": 1, "E": 2, "F": 0}

# The same vignette, pertexample1, te as durations.
VIGNETTE_PERT = """
A 5   -     0    5    0    5    0
B 7   A     5    12   5    12   0
C 5.5 B     12   17.5 14   19.5 2
D 5.5 B     12   17.5 13.5 19   1.5
E 8   B     12   20   12   20   0
F 5.5 C     17.5 23   19.5 25   2
G 6   D     17.5 23.5 19   25   1.5
H 5   E     20   25   20   25   0
I 6   F,G,H 25   31   25   31   0
"""

# http://ece.nu/tag/project-scheduling/
LECTURE = """
A 12 -   0  12 0  12 0
B 10 -   0  10 2  12 2
C 10 A,B 12 22 12 22 0
D 5  C   22 27 22 27 0
E 3  C   22 25 24 27 2
"""


def steps_of(table: str) -> list[Step]:
    """The activities of a table."""
    rows = (line.split() for line in table.strip().splitlines())
    return [
        Step(key=row[0], duration=Fraction(row[1]), after=() if row[2] == "-" else tuple(row[2].split(",")))
        for row in rows
    ]


def told(step: StepTimes) -> tuple[Fraction, ...]:
    """What the tables print of an activity."""
    return step.early_start, step.early_finish, step.late_start, step.late_finish, step.total_float


@pytest.mark.parametrize(
    ("table", "length", "critical"),
    [
        pytest.param(STADIUM, 64, "T01 T02 T03 T05 T06 T09 T12 T17 T18", id="stadium, 64 weeks"),
        pytest.param(VIGNETTE, 8, "C F", id="vignette, 8"),
        pytest.param(VIGNETTE_PERT, 31, "A B E H I", id="vignette with three points, 31"),
        pytest.param(LECTURE, 27, "A C D", id="lecture, 27"),
    ],
)
def test_every_published_time_and_float(table: str, length: int, critical: str) -> None:
    """ES, EF, LS, LF and slack of every activity, the length and the critical path."""
    times = network_times(steps_of(table))
    rows = (line.split() for line in table.strip().splitlines())
    assert {step.key: told(step) for step in times.steps} == {
        row[0]: tuple(Fraction(cell) for cell in row[3:]) for row in rows
    }
    assert (times.length, times.critical) == (length, tuple(critical.split()))


def test_the_published_free_floats() -> None:
    """The same vignette: FF = earliest start of what follows less earliest finish."""
    times = network_times(steps_of(VIGNETTE))
    assert {step.key: step.free_float for step in times.steps} == VIGNETTE_FREE


def test_a_published_work_breakdown_takes_eight_days() -> None:
    """R. Darnall and J. Preston, Project Management from Simple to Complex, section 8.3, figure 8.15."""
    table = """
    1.1   2 -
    1.2   1 1.1
    1.3   1 1.2
    1.4   1 1.1
    2.1   2 -
    2.2.1 2 1.3
    2.2.2 1 2.2.1
    2.2.3 1 2.2.2
    2.3   1 1.3,2.1
    """
    times = network_times(steps_of(table))
    ends = {step.key: step.early_finish for step in times.steps}
    assert (times.length, ends["1.4"], ends["2.3"]) == (8, 3, 5)
    assert times.critical == ("1.1", "1.2", "1.3", "2.2.1", "2.2.2", "2.2.3")


def test_nothing_to_do_takes_no_time() -> None:
    """An empty plan is not a mistake."""
    assert network_times([]) == NetworkTimes(steps=(), length=Fraction(0))


def test_a_circle_is_named_in_order() -> None:
    """Each after the one named next, the last after the first; what only hangs behind the circle is not in
    it.
    """
    steps = [
        Step(key="roof", after=("walls",)),
        Step(key="walls", after=("floor", "ground")),
        Step(key="floor", after=("roof",)),
        Step(key="ground"),
        Step(key="paint", after=("roof",)),
    ]
    assert network_faults(steps) == (NetworkFault(flaw=Flaw.CIRCLE, keys=("roof", "walls", "floor")),)


def test_a_phase_after_itself_is_a_circle_of_one() -> None:
    """The shortest there is."""
    assert network_faults([Step(key="roof", after=("roof",))]) == (NetworkFault(flaw=Flaw.CIRCLE, keys=("roof",)),)


def test_an_unknown_predecessor_and_a_doubled_key_are_told() -> None:
    """Who waits, and for what; every flaw at once."""
    steps = [Step(key="roof", after=("wals", "wals")), Step(key="walls"), Step(key="walls")]
    assert network_faults(steps) == (
        NetworkFault(flaw=Flaw.TWICE, keys=("walls",)),
        NetworkFault(flaw=Flaw.UNKNOWN, keys=("roof", "wals")),
    )


def test_flawed_steps_have_no_times() -> None:
    """The error carries the faults and says them."""
    with pytest.raises(FlawedNetworkError, match=r"not in the plan: roof, wals$") as caught:
        network_times([Step(key="roof", after=("wals",))])
    assert caught.value.faults[0].phases == ("roof",)


def test_steps_keep_the_order_given_as_far_as_they_can() -> None:
    """The plan's order, each moved only behind what it comes after."""
    steps = [Step(key="b", after=("c",)), Step(key="a"), Step(key="c"), Step(key="d")]
    assert [step.key for step in in_order(steps)] == ["a", "c", "b", "d"]


@st.composite
def networks(draw: st.DrawFn) -> list[Step]:
    """Up to nine steps in any order, without circles."""
    count = draw(st.integers(1, 9))
    afters = [draw(st.sets(st.integers(0, place - 1))) if place else set() for place in range(count)]
    durations = draw(st.lists(st.integers(0, 50), min_size=count, max_size=count))
    steps = [
        Step(key=str(place), after=tuple(map(str, sorted(after))), duration=Fraction(duration))
        for place, (after, duration) in enumerate(zip(afters, durations, strict=True))
    ]
    return draw(st.permutations(steps))


def graph_of(steps: list[Step]) -> networkx.DiGraph:
    """Each step as an edge from its begin to its end, so that the longest path is the sum of durations."""
    graph = networkx.DiGraph()
    for step in steps:
        graph.add_edge((step.key, "begin"), (step.key, "end"), weight=int(step.duration))
        graph.add_edges_from((((key, "end"), (step.key, "begin")) for key in step.after), weight=0)
    return graph


def longest(graph: networkx.DiGraph) -> int:
    """The length of the longest path."""
    return int(networkx.dag_longest_path_length(graph, weight="weight", default_weight=0))


@given(steps=networks())
def test_networkx_finds_the_same_longest_paths(steps: list[Step]) -> None:
    """The whole length; the longest way to each step's begin; the longest way from each step's end."""
    times, graph = network_times(steps), graph_of(steps)
    assert times.length == longest(graph)
    for step in times.steps:
        begin, end = (step.key, "begin"), (step.key, "end")
        before = graph.subgraph({*networkx.ancestors(graph, begin), begin})
        behind = graph.subgraph({*networkx.descendants(graph, end), end})
        assert step.early_start == longest(before)
        assert step.late_finish == times.length - longest(behind)


@given(steps=networks(), delays=st.integers(0, 60))
def test_a_float_is_exactly_what_a_step_may_be_late(steps: list[Step], delays: int) -> None:
    """Longer by its total float changes nothing, by more makes the whole longer by just as much more."""
    times = network_times(steps)
    for step in times.steps:
        longer = [
            Step(key=one.key, after=one.after, duration=one.duration + delays * (one.key == step.key)) for one in steps
        ]
        assert network_times(longer).length == times.length + max(delays - step.total_float, 0)
        assert 0 <= step.free_float <= step.total_float


@given(pairs=st.sets(st.tuples(st.integers(0, 5), st.integers(0, 5)), max_size=12))
def test_a_circle_is_found_where_networkx_finds_one(pairs: set[tuple[int, int]]) -> None:
    """And what is named is a circle of the graph."""
    graph = networkx.DiGraph()
    graph.add_nodes_from(range(6))
    graph.add_edges_from(pairs)
    steps = [Step(key=str(one), after=tuple(str(b) for a, b in sorted(pairs) if a == one)) for one in range(6)]
    faults = network_faults(steps)
    assert bool(faults) != networkx.is_directed_acyclic_graph(graph)
    for fault in faults:
        around = list(map(int, fault.keys))
        assert all(graph.has_edge(a, b) for a, b in zip(around, around[1:] + around[:1], strict=True))
        assert len(set(around)) == len(around)


def test_a_step_takes_no_time_unless_it_says_so() -> None:
    """Two of them in a row are over at once."""
    assert network_times([Step(key="a"), Step(key="b", after=("a",))]).length == 0
