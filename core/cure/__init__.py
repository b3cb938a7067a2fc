"""Salt, sugar and nitrite in meat: doses by law, and how far they have come."""
