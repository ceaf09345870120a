"""How a day is asked for in every form."""

from django import forms

DAY = forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
"""The form of a date that browsers read and write; each field takes a copy."""
