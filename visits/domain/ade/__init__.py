"""A farm's data as JSON of the ICAR Animal Data Exchange (ADE), written against version 1.5.1 of 10 December 2025.

What was read of the standard, and from which state of its files, stands in `fixtures/ade/README.md`.
"""
