"""The bibliography of fish, its worms and its smoking; `core/sources.py` has the rest, and what each status means."""

from core.source import Source

FDA_SMOKED_FISH = Source(
    "FDA_SMOKED_FISH",
    "Parameters to control pathogens in cold-smoked fish: biogenic amines",
    "US FDA",
    "2001",
    "CONFIRMED",
)
FOOD_CODE_PARASITES = Source(
    "FOOD_CODE_PARASITES", "Freezing that kills the worms of fish", "US FDA Food Code, 3-402.11", "2022", "CONFIRMED"
)
JASON_FISH = Source(
    "JASON_FISH", "Drying of fish muscle: 3.4e-10 m2/s at 30 °C, 30 kJ/mol", "A. C. Jason", "1958", "MEMORY"
)
TORRY_HOT_SMOKING = Source(
    "TORRY_HOT_SMOKING", "Hot smoking of fish: 3.5 % salt in its water", "Torry Advisory Note 82", "2001", "CONFIRMED"
)
TORRY_SALMON = Source(
    "TORRY_SALMON",
    "Smoked salmon: 7 to 9 % lost in 4 to 10 h at 27 °C, 16 to 18 % with salting",
    "Torry",
    "-",
    "CONFIRMED",
)
MSU_SMOKED_FISH = Source(
    "MSU_SMOKED_FISH", "Preserving Food Safely 01600580 and 01600816", "Michigan State University", "1997", "CONFIRMED"
)
