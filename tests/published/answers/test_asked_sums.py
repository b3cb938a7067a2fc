"""Sums in the short words of strangers, each by the sum that was read to be right. Invented, no source."""

from pathlib import Path

from tests.published.answers.asked import answered_by, asked, table

ROWS = table("asked_sums.csv")


def test_each_is_met_by_its_sum(tmp_path: Path) -> None:
    """No other sum, no batch begun, and nothing asked for that was said."""
    found = asked(tmp_path, [row["question"] for row in ROWS])
    by = [answered_by(facts) for facts in found]
    wrong = [(row["question"], name) for row, name in zip(ROWS, by, strict=True) if name != row["answered_by"]]
    assert wrong == []


def test_what_they_come_to(tmp_path: Path) -> None:
    """90 g at 5 % are 1.71 l (90 / 0.05 - 90); 60 for 5 kg is 4.21 for a plate of 150 g at 0.45 left (both derived)."""
    lines = ["90g salt how much water for 5% brine", "paid 60 for 5 kg packer whats that per plate"]
    water, price = asked(tmp_path, lines)
    assert abs(water["water_kg"] - 1.71) < 0.001
    assert abs(price["cooked"] - 12.0 / 0.45) < 0.05


def test_what_is_told_is_counted(tmp_path: Path) -> None:
    """A wished share of salt, a rind that is on (FSIS 1995: 10 %), a step of a scale, a starter (all derived)."""
    lines = [
        "want 2% on 1.35 kg how much salt if cure counts, cure is 6.25 %",
        "5 kg belly rind on 6.25 % cure how much",
        "kitchen scale jumps by 5 need 11 g",
        "1.36 kg salmon feeds how many as a starter",
        "sugar per 100g if i used 1 percent",
    ]
    _, rind, scale, starter, sugar = asked(tmp_path, lines)
    assert abs(rind["cure_kg"] - 0.9 * 5.0 * 120e-6 / 0.0625) < 1e-6
    assert abs(scale["stock_kg"] - 0.110) < 1e-9
    assert 12.0 < starter["portions"] < 15.0
    assert abs(sugar["sugar_kg"] - 0.1 * 0.01 / 0.6) < 2e-5


def test_no_meat_needs_to_be_named(tmp_path: Path) -> None:
    """132 °F for 60 min is short of every table, 71 min for beef and pork (FSIS 2021); 140 °F for 20 is not for all."""
    short, over, apart = asked(
        tmp_path,
        [
            "roast held 132 f for an hour enough?",
            "held 165 f for 10 minutes enough?",
            "held 140 f for 20 minutes is that enough",
        ],
    )
    assert short["enough"] is False
    assert over["enough"] is True
    assert apart["asked"] == "species"


def test_what_two_weights_and_one_hour_come_to(tmp_path: Path) -> None:
    """2.4 of 4.1 kg is left; from 140 °F at 15:20 plain meat has till 16:50 and 21:50 (FSIS 1999: 1.5 h, then 5 h).

    9 g are a third of an ounce: steps of a tenth are half of it out, steps of a hundredth 3 % (derived).
    """
    lines = [
        "weighed 4.1 kg before and 2.4 kg after is that normal",
        "hit 140 f at 3.20pm when does it need to be 80 f",
        "my scale is in oz need 9 g",
        "my scale goes in 0.01 oz need 9 g",
    ]
    loss, cold, coarse, fine = asked(tmp_path, lines)
    (gone,) = asked(tmp_path / "more", ["belly lost 350 g from 2.9 kg normal?"])
    assert abs(gone["left"] - 2.55 / 2.9) < 1e-9
    assert abs(loss["left"] - 2.4 / 4.1) < 1e-9
    assert abs(cold["first_h"] - (15.0 + 20.0 / 60.0 + 1.5)) < 1e-9
    assert abs(cold["second_h"] - (15.0 + 20.0 / 60.0 + 6.5)) < 1e-9
    assert 0.3 < coarse["error"] < 0.33
    assert fine["error"] < 0.04


def test_a_core_of_hours_ago_says_nothing_of_a_dead_fire(tmp_path: Path) -> None:
    """Read now it stayed hot; read when the fire died it may be cold by now: it is read first (FSIS danger zone)."""
    now, then, low = asked(
        tmp_path,
        [
            "fire out for 40 min core still 151 f",
            "fire died 3 hours ago core was 158 f",
            "fire died around 2 its 5 now probe says 118 f",
        ],
    )
    assert now["verdict"] != "throw_away"
    assert then["entry"] == "fire-out"
    assert low["verdict"] == "throw_away"


def test_an_hour_without_its_half_is_the_next_that_can_be_meant(tmp_path: Path) -> None:
    """From 10 am until 7 there are nine hours, less one of rest; «on at 9 tonight» is the night (derived)."""
    by_seven, night = asked(
        tmp_path,
        [
            "if the 3 kilos goes on at 10 am can we eat by 7",
            "if the 11 pounder is on at 9 tonight when can i expect to eat",
        ],
    )
    assert by_seven["has_h"] == 8.0
    assert night["sum"] == "light_by"


def test_what_is_eaten_by_its_label(tmp_path: Path) -> None:
    """1020 mg in 4 oz are 2295 mg in 9 oz; 0.29 of 3.63 kg is 8.0 % (derived)."""
    lines = [
        "the label says 1,020 mg sodium per 4 oz and i ate 9 oz",
        "ham was 3.63kg before i injected and 3.92 after what percent did i get in",
        "3 kg belly how many 30 g rashers do i get",
    ]
    label, pumped, rashers = asked(tmp_path, lines)
    assert abs(label["sodium_kg"] - 1020e-6 * 9.0 / 4.0) < 1e-9
    assert abs(pumped["pump"] - 0.29 / 3.63) < 1e-6
    assert 75.0 < rashers["portions"] < 95.0
