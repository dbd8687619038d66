"""What does not add up on a car, and what does and is left in peace."""

import pytest

from heraldry.diagrams.freight import ReportingMark, StencilDate, Weighing, car_findings, data_block, line_findings


def weighed(year: int, pounds: int = 45_000, limit: int | None = None, starred: bool = False) -> Weighing:
    return Weighing(date=StencilDate(year, 4), light_weight_lb=pounds, load_limit_lb=limit, starred=starred)


def told(car, year, road_name="") -> list[tuple[str, str, str]]:
    return [(found.kind, found.severity, found.message) for found in car_findings(car, year, road_name)]


@pytest.mark.parametrize(
    "changed",
    [
        {},
        {"weighings": (weighed(1957, limit=124_000),)},
        {"weighings": (weighed(1957, limit=110_000, starred=True),), "capacity_lb": 110_000},
        {"capacity_lb": 124_000},
        {"gross_rail_load_lb": 169_000},
    ],
)
def test_a_sound_car_is_left_in_peace(car, changed):
    assert told(car(**changed), 1957, "Umbagog & Magalloway Railroad") == []


@pytest.mark.parametrize(
    ("changed", "kind", "severity", "message"),
    [
        (
            {"weighings": (weighed(1957, limit=120_000),)},
            "load limit",
            "warning",
            "120,000 + 45,000 = 165,000 lb does not add up for 5 1/2 x 10 in journals in 1957: 169,000 lb; "
            "a limit set lower by the owner has a star",
        ),
        (
            {"weighings": (weighed(1957, limit=132_000),)},
            "load limit",
            "warning",
            "132,000 + 45,000 = 177,000 lb is more than 5 1/2 x 10 in journals in 1957 carry: 169,000 lb",
        ),
        (
            {"weighings": (weighed(1957, limit=132_000, starred=True),)},
            "load limit",
            "warning",
            "132,000 + 45,000 = 177,000 lb is more than 5 1/2 x 10 in journals in 1957 carry: 169,000 lb",
        ),
        (
            {"weighings": (weighed(1957, limit=124_000, starred=True),)},
            "load limit",
            "note",
            "124,000 + 45,000 = 169,000 lb is all that the axles carry: a star says that it is less",
        ),
        (
            {"weighings": (weighed(1957, limit=110_050, starred=True),)},
            "load limit",
            "warning",
            "LD LMT goes by 100 lb, found 110,050",
        ),
        (
            {"weighings": (weighed(1957, 45_049),)},
            "light weight",
            "note",
            "LT WT goes by 100 lb: 45,049 is stencilled as 45,000",
        ),
        (
            {"weighings": (weighed(1957, 85_000),)},
            "light weight",
            "note",
            "LT WT 85,000 is above LD LMT 84,000: few cars weigh more than they carry",
        ),
        ({"capacity_lb": 100_500}, "capacity", "warning", "CAPY goes by 1,000 lb, found 100,500"),
        (
            {"capacity_lb": 125_000},
            "capacity",
            "warning",
            "CAPY 125,000 is above LD LMT 124,000, it may be as much at most",
        ),
        (
            {"gross_rail_load_lb": 170_000},
            "gross rail load",
            "warning",
            "a gross rail load of 170,000 lb is none for 5 1/2 x 10 in journals in 1957: 169,000 lb",
        ),
    ],
)
def test_what_does_not_add_up(car, changed, kind, severity, message):
    assert told(car(**changed), 1957) == [(kind, severity, message)]


def test_a_lower_limit_on_a_286000_lb_car_needs_its_star(car):
    car_of_1996 = {"built": StencilDate(1996, 1), "axle": "F", "gross_rail_load_lb": 286_000}
    limited = {"limit": 211_000, "pounds": 52_000}
    assert told(car(**car_of_1996, weighings=(weighed(1996, **limited, starred=True),)), 1996) == []
    assert [kind for kind, _, _ in told(car(**car_of_1996, weighings=(weighed(1996, **limited),)), 1996)] == [
        "load limit"
    ]


@pytest.mark.parametrize(
    ("body", "year", "late"),
    [
        ("steel", 1959, False),
        ("steel", 1960, True),
        ("wood", 1958, False),
        ("wood", 1959, True),
        ("steel", 1975, False),
    ],
)
def test_cars_were_weighed_again(car, body, year, late):
    found = told(car(body=body), year)
    assert [kind for kind, _, _ in found] == (["weighing date"] if late else [])


@pytest.mark.parametrize(("month", "late"), [(7, False), (6, True)])
def test_thirty_months_to_the_january_of_the_year_are_not_too_long(car, month, late):
    weighing = Weighing(date=StencilDate(1957, month), light_weight_lb=45_000)
    assert bool(told(car(weighings=(weighing,)), 1960)) is late


def test_a_mark_begins_as_its_railroad_does(car):
    assert told(car(), 1957, "Hekla Northern Railway") == [
        ("reporting mark", "note", "a railroad's mark begins as its name does: UMGR is not for Hekla Northern Railway")
    ]


@pytest.mark.parametrize(
    ("mark", "name", "severity", "message"),
    [
        (
            "UMX",
            "Umbagog Railroad",
            "note",
            "UMX ends in X, as marks of private owners do: Umbagog Railroad sounds like",
        ),
        (
            "UMGU",
            "Umbagog Railroad",
            "warning",
            "UMGU ends in U, as marks of a container owner do: no freight car bears",
        ),
        ("UMGZ", "", "warning", "UMGZ ends in Z, as marks of a trailer owner do: no freight car bears it"),
    ],
)
def test_what_the_last_letter_of_a_mark_says_is_told(car, mark, name, severity, message):
    ((kind, how, said),) = told(car(mark=ReportingMark(mark)), 1957, name)
    assert (kind, how) == ("reporting mark", severity)
    assert said.startswith(message)


def test_a_private_owner_bears_an_x_in_peace(car):
    assert told(car(mark=ReportingMark("UMX")), 1957, "Umbagog Paper Company") == []


def test_white_dots_were_gone_by_1979(car):
    assert "wheel dot" not in [kind for kind, _, _ in told(car(dot="white"), 1978)]
    assert "wheel dot" in [kind for kind, _, _ in told(car(dot="white"), 1979)]


def test_letters_under_the_federal_height(car):
    small = data_block(car(), 1985, mark_in=6, number_in=6.5)
    assert [found.message for found in line_findings(small, 1985)] == [
        "UMGR is 6 in high, 49 CFR 215.301 asks for 7 in at least",
        "0301 is 6.5 in high, 49 CFR 215.301 asks for 7 in at least",
    ]
    assert line_findings(small, 1975) == ()
    assert line_findings(data_block(car(), 1985), 1985) == ()
