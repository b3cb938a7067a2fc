"""What is worded much like a danger and is none: it is not refused."""

import pytest

from core.answers.dangers import grave


@pytest.mark.parametrize(
    "line",
    [
        "my scale reads in ounces, what is 8.5 g in oz",
        "the kids licked their plates clean after the brisket",
        "the dog barked at the smoker all afternoon",
        "can i add another teaspoon of sugar to be safe it isnt bitter",
        "another scoop of charcoal to be safe?",
        "i always use double the garlic, never had a complaint",
        "we always double bag it, never had a leak",
        "hubby also put the salt in the fridge",
        "two lots of bacon in the cure at once ok?",
        "overdid the pepper in the rub",
        "went heavy on the smoke last time",
        "guests are green with envy",
        "he says it turned grey inside after smoking",
        "she likes the blue cheese after the pastrami",
        "dad went grey years ago, still loves my ham",
        "the beehives are next to my smoker",
        "nan makes a rash judgement on my bacon",
        "wife swells with pride at my brisket",
        "i put the bucket of water outside for the dog",
        "soak the ham in a bowl of cold water overnight in the fridge",
        "thaw it in a sink of cold water for two hours?",
        "kept the grill at 40 c below last time",
        "leave it in the fridge at 3 c overnight",
        "pull it at 203 and put it in the fridge, eat friday",
        "steam it friday, smoked today",
        "chill it tonight, slice it saturday",
        "smoked salmon sealed at 38 in the fridge for four days",
        "warm rolls for the beach, how many for 8",
        "took the slices to the beach in a cooler full of ice, 36 in there",
        "is venison summer sausage smoked to 160 fine",
        "elk roast to 165 then?",
        "carpaccio is what my neighbour makes, i do pastrami",
        "where do i keep the curing salt",
        "the curing salt is on the top shelf labelled",
        "the spice rack fell down, coriander everywhere",
        "the shine on it looks like oil",
        "rainbow like diesel on water on the cut, normal?",
        "lox recipe pls",
        "the warm cooler holds heat well for resting?",
        "hold it in the cooler wrapped for 4 hours",
        "how many people for a raffle ham? joking",
        "got it going out in the yard under a tree",
        "had the smoker running in the open all day",
        "letting the fire burn down after the cook tonight",
        "the fire will burn out by itself tonight, meat is off",
        "fridge door by the back door sticks",
        "hall pass from the wife to smoke all day",
        "he cant suck the noodles quietly",
        "the liquid in the bag sips back into the meat?",
        "my husband looks a bit tired after the ham",
        "they went grey after the brine, slices i mean",
        "the meat has been cured, so what do i cook it to",
        "cured means what exactly",
        "its been smoked so its cooked, 203 inside",
    ],
)
def test_it_is_no_danger(line: str) -> None:
    """Sugar, garlic and rub by the spoon, a wife who swells with pride, a shine like oil: nothing to warn of."""
    assert grave(line) is None
