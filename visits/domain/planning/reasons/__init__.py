"""The reasons of a plan: each stop's, each left-out visit's and what would make room, promises, rules of thumb."""
