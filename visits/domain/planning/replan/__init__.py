"""Planning again while the week is under way: keep what is promised, change as little as its price says."""
