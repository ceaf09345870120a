"""Planning the week."""
