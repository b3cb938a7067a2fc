"""How good the ready time is on cooks of a finer, different model. It says nothing of a real cooker."""

import pytest

from core.heat.cook import History
from core.heat.doubt import doubt
from tests.laws.heat import baselines
from tests.laws.heat.finer_cook import cook, nominal, worlds
from tests.laws.heat.ready_trial import KEPT_COUNT, KEPT_SEED, SHARES, Trial, estimates, kept, scores, table, trials

# median error of the ready time as share of the cook, at that share of its length
AIM = {0.25: 0.16, 0.5: 0.12, 0.75: 0.09, 0.9: 0.04}


def test_two_dozen_cooks_are_told_well() -> None:
    """24 kept cooks: median error within the aim (a fifth of slack at the end), 80 % band holding 70 to 100 %."""
    found = scores(estimates(kept()))
    for share, aim in AIM.items():
        assert found[share].error_share <= aim * (1.2 if share == 0.9 else 1.0), table(found)
        assert 0.70 <= found[share].held <= 1.0, table(found)
    assert found[0.9].error_h < found[0.0].error_h / 1.5, table(found)
    widths = [score.width_share for score in found.values()]
    assert widths == sorted(widths, reverse=True), table(found)


def test_weight_loss_of_the_kept_cooks_lies_in_the_band() -> None:
    """The band of the loss at half the cook holds at least 60 % of what the finer model lost."""
    pairs = estimates(kept(), (0.5,))[0.5]
    held = [e.loss.p10 <= t.lost <= e.loss.p90 for t, e in pairs]
    assert sum(held) / len(held) >= 0.6


def false_doubts(cooks: list[Trial]) -> float:
    """Share of the true readings that would be doubted when they come, one after the other."""
    doubted = [
        doubt(t.cook, History(t.seen[:number], now_s=seen.seconds), seen) is not None
        for t in cooks
        for number, seen in enumerate(t.seen)
    ]
    return sum(doubted) / len(doubted)


def test_true_readings_are_hardly_ever_doubted() -> None:
    """Of the readings of the kept cooks, all of them true to a home thermometer, under 1 % are asked about."""
    assert false_doubts(kept()[:12]) < 0.01


@pytest.mark.slow
def test_the_kept_cooks_are_those_of_the_finer_model() -> None:
    """The finer model run anew gives the file of kept cooks, to a minute."""
    world = worlds(KEPT_COUNT, KEPT_SEED)
    fresh = trials(world, cook(world, KEPT_SEED), KEPT_SEED)
    assert [t.ready for t in kept()] == pytest.approx([t.ready for t in fresh], abs=0.02)
    assert [len(t.seen) for t in kept()] == [len(t.seen) for t in fresh]


@pytest.mark.slow
def test_the_finer_model_knows_the_cases_too() -> None:
    """The finer model at its middle: COOK_CASE within 15 %; a large brisket in foil at 4 h about 9 h, bare over 13."""
    assert float(cook(nominal(), 1).ready[0]) == pytest.approx(10.67, rel=0.15)
    large = {"mass": 6.0, "thickness": 0.075, "pit_set": 113.0, "target": 90.5}
    assert float(cook(nominal(**large, wrap_h=4.0), 1).ready[0]) == pytest.approx(9.0, abs=0.8)
    assert float(cook(nominal(**large), 1).ready[0]) > 13.0


@pytest.mark.benchmark
def test_two_hundred_cooks_are_told_well(capsys: pytest.CaptureFixture[str]) -> None:
    """200 fresh cooks: within the aim of AIM at each share; the 80 % band holds 75 to 88 %, at the start too.

    At half time at least 2.5 times better than the hours of a pound and than a straight line; beside them the floor
    of a regression that was taught by 500 other cooks of the finer model.
    """
    cooks, taught = _drawn(200, 22), _drawn(500, 77)
    found = scores(estimates(cooks))
    fixed = baselines.best_pound(cooks)
    beside = {
        "a pound's hours, 1.5": baselines.by_the_pound(cooks),
        f"the best, {fixed:.2f}": baselines.by_the_pound(cooks, fixed),
        "a straight line": baselines.by_a_line(cooks),
        "the floor": baselines.by_regression(taught, cooks),
    }
    with capsys.disabled():
        print("\n" + table(found) + "\n" + _beside(beside))
    for share, aim in AIM.items():
        assert found[share].error_share <= aim, table(found)
    for score in found.values():
        assert 0.75 <= score.held <= 0.88, table(found)
    half = found[0.5].error_share
    assert beside["a pound's hours, 1.5"][0.5] >= 2.5 * half
    assert beside["a straight line"][0.5] >= 2.5 * half


def _drawn(count: int, seed: int) -> list[Trial]:
    world = worlds(count, seed)
    return trials(world, cook(world, seed), seed)


def _beside(misses: dict[str, baselines.Misses]) -> str:
    """Errors of the baselines at each share, in percent."""
    head = " " * 22 + "".join(f"{share:8.2f}" for share in SHARES)
    rows = [f"{name:22}" + "".join(f"{100 * told[share]:8.1f}" for share in SHARES) for name, told in misses.items()]
    return "\n".join([head, *rows])
