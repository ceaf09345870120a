"""The invented demo business: a pure generator (`invent_*`), what builds it in the database, and its papers."""
