"""Tables, migrations, and what is kept in them."""
