"""Proofs: what no plan of a week can undercut, and the best choice among many days already seen."""
