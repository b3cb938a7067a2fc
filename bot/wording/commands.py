"""The few commands that are offered in a menu; each is a plain word that works without the slash too."""

MENUS = (
    (
        None,
        (
            ("plan", "The whole week on one page"),
            ("now", "What to do now"),
            ("safe", "Is it safe, and by which rule"),
            ("undo", "Take back the last thing said"),
            ("help", "What you can say here"),
        ),
    ),
)
