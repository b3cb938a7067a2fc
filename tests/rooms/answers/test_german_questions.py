"""Questions of the trade in German: each phrasing finds its entry, and so do most that nobody wrote down beforehand."""

import pytest

from core.answers.entries import asked_in, entries, ways
from core.answers.find import find

# written before the phrasings were looked at again; 23 of these 26 were found at the first look
UNSEEN = {
    "kann ich wegen regen in der garage räuchern?": "indoors",
    "darf der smoker unters carport": "indoors",
    "ist die lake noch gut wenn sie schleimig ist": "brine-ropey",
    "wie lange hält geräuchertes pastrami im kühlschrank": "store-cooked",
    "kann ich himalayasalz nehmen": "himalayan",
    "mein fleisch ist beim pökeln grau geworden": "grey-outside",
    "was bedeutet der rosa rand": "smoke-ring",
    "welches holz nimmt man": "wood",
    "wie oft soll ich den beutel wenden": "flip-often",
    "muss die lake gekocht werden": "boil-brine",
    "kann man den lachs kalt räuchern": "cold-smoke",
    "ist pökelsalz schädlich": "nitrite-health",
    "dürfen schwangere das essen": "pregnant",
    "das thermometer zeigt falsch an": "probe-check",
    "warum ist meine brust so zäh": "tough",
    "pastrami einfrieren": "freeze-cooked",
    "wie viel pökelgewürz kommt rein": "pickling-spice",
    "kann ich fertiges pastrami verkaufen": "selling",
    "darf ich heute anräuchern und morgen weitermachen": "partial",
    "der speck hat schimmel": "mould",
    "wie backe ich brot": "off-food",
    "hat der hund pökelsalz gefressen": "pet-salt",
    "ich habe kopfweh vom rauch": "co-symptoms",
    "kann ich spiritus auf die glut schütten": "lighter-fluid",
    "reines nitrit aus der apotheke": "pure-nitrite",
    "können wir wildschwein roh essen": "game",
}
# written before the phrasings were looked at; at the first look 29 of these 40 were answered, 7 offered
ASKED_LATER = {
    "mein kassler ist innen noch ganz blass, kann man das essen": ("grey-middle",),
    "was mach ich wenn die lake komisch riecht": ("smell-off", "brine-ropey"),
    "wie lang muss ein 6 cm dickes stück in der lake liegen": ("how-days",),
    "bei welcher temperatur räuchere ich speck": ("pit-temp", "bacon-how"),
    "darf der hund die schwarte haben": ("pet-share",),
    "warum muss man fleisch nach dem pökeln durchbrennen lassen": ("equalise",),
    "ich hab nur meersalz daheim, geht das auch": ("salt-kinds", "cure-types", "when-cure"),
    "wie viel gramm nitritpökelsalz nehme ich für 3 kilo bauch": ("how-dose", "spoons"),
    "ist es schlimm wenn das fleisch nicht ganz unter der lake ist": ("brine-level",),
    "kann man den smoker bei regen unter den balkon stellen": ("indoors",),
    "mein thermometer spinnt": ("probe-check", "probe-died"),
    "wie merke ich dass die brust weich genug ist": ("tender-feel",),
    "hühnchen innen 72 grad reicht das": ("poultry-temp",),
    "wie lange kann ich den geräucherten lachs im kühlschrank lassen": ("fish-keep",),
    "darf ich beim räuchern kurz einkaufen gehen": ("night-cook",),
    "was ist besser buche oder kirsche": ("wood",),
    "wo kommt der temperaturfühler hin": ("probe-where", "pit-probe"),
    "kann ich das pökelsalz durch selleriesaft ersetzen": ("celery",),
    "warum ist mein kassler so salzig geworden": ("too-salty",),
    "wie wärme ich kassler am besten auf": ("steam", "microwave"),
    "fleisch ist nach dem auftauen grau": ("grey-outside", "freezer-burn", "thaw"),
    "es bleibt seit zwei stunden bei 67 grad stehen": ("stall-what",),
    "mein kleiner sohn hat in die pökelsalzdose gegriffen und dann am finger gelutscht": ("poison",),
    "die verpackung vom fleisch ist dick aufgebläht": ("swollen",),
    "kann ich statt wasser auch brühe für die lake nehmen": ("beer-brine", "brine-amount"),
    "wie lange hält sich die angesetzte lake": ("brine-ahead",),
    "muss der beutel wirklich zweimal am tag gewendet werden": ("flip-often",),
    "sind 7 grad im kühlschrank zu viel": ("fridge-temp",),
    "ich bin schwanger, kann ich vom geräucherten schinken essen": ("pregnant",),
    "kann das pökelsalz schlecht werden": ("store-cure",),
    "wie heiß muss schweinefleisch innen werden": ("pork-temp",),
    "wie fange ich am besten an, hab noch nie gepökelt": ("first-project",),
    "was bedeutet 0,5 prozent auf dem pökelsalz": ("continental-salt", "percent-packet"),
    "schwarzer belag auf dem fleisch ist das ruß": ("bitter", "bark"),
    "warum muss das eigentlich so lange pökeln": ("how-days",),
    "meine kohle geht dauernd aus": ("fire-out", "too-cold", "refuel"),
    "gibt es eine obergrenze für nitrit": ("cure-limits",),
    "wie viel wasser kommt auf 4 kilo fleisch": ("brine-amount",),
    "kann ich zwei verschiedene stücke im selben beutel pökeln": ("mixed-tub",),
    "welches bier passt dazu": ("serve",),
}


ASKS = [(name, ask) for name, asks in asked_in("de").items() for ask in asks]


@pytest.mark.parametrize("step", [5, pytest.param(1, marks=pytest.mark.slow)])
def test_every_phrasing_finds_its_own_entry(step: int) -> None:
    """As the answer, or among the few that are offered; one in five in the ordinary run."""
    asked = [(name, ask, find(ask, "de")) for name, ask in ASKS[::step]]
    assert [(name, ask) for name, ask, found in asked if name not in (found.answer, *found.perhaps)] == []


def test_most_that_nobody_wrote_down_find_theirs() -> None:
    """At least 22 of 26 are answered or offered, and none is answered with another entry."""
    found = {question: find(question, "de") for question in UNSEEN}
    right = [q for q, name in UNSEEN.items() if name in (found[q].answer, *found[q].perhaps)]
    assert len(right) >= 22
    assert [(q, found[q].answer) for q, name in UNSEEN.items() if found[q].answer not in (None, name)] == []


def test_what_was_asked_later_is_answered() -> None:
    """At least 36 of 40 by one of the entries that are meant, or offered among three; none with another entry."""
    found = {question: find(question, "de") for question in ASKED_LATER}
    right = [q for q, names in ASKED_LATER.items() if {*names} & {found[q].answer, *found[q].perhaps}]
    assert len(right) >= 36
    assert [(q, found[q].answer) for q, names in ASKED_LATER.items() if found[q].answer not in (None, *names)] == []


@pytest.mark.parametrize("question", ["do i need to boil the brine", "what is a pellicle and do i need it"])
def test_english_is_answered_in_every_language(question: str) -> None:
    """Whoever asks in English is found the same, whatever they are spoken to in."""
    assert find(question, "de").answer == find(question).answer is not None


def test_an_entry_without_german_is_asked_for_in_english() -> None:
    """What a button says that offers it."""
    assert {name: ways(name, "xx") for name in entries()} == {name: e.asks for name, e in entries().items()}
