from trimops.errands.models.errand import Errand

__all__ = ["Errand"]
