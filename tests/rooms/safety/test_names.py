"""core.safety.findings: the names by which a record leaves the house, in JSON and CSV, which others read later."""

from core.safety.findings import Outcome, Rule, Status

RULES = """
core_reading_possible nitrite_ceiling fridge_40f brine_40f raw_keeping longest_cure come_up_6h reach_140f_in_4h
held_above_140f doneness_floor lethality_table poultry_165f smoked_fish_160f partial_cook cooling
two_hours_off_the_heat use_by vacuum_fish_38f fire_out left_out power_cut leaked_bag warm_fridge warm_brine
dosed_twice spoiled trichinae
"""


def test_the_names_stay():
    """A record that was kept or handed on says the same next year: no name is changed, none is taken away."""
    assert [rule.value for rule in Rule] == RULES.split()
    assert [status.value for status in Status] == ["passed", "failed", "open", "unknown"]
    assert [outcome.value for outcome in Outcome] == ["safe", "eat_now", "not_yet", "cannot_say", "throw_away"]
