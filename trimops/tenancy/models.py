"""What every row of a business is."""

from functools import cache
from typing import Any, ClassVar, Self

from django.core.exceptions import ObjectDoesNotExist, ValidationError
from django.db import models

from trimops.accounts.models import Business
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from trimops.tenancy.kin import TenantModelBase, parents_within
from trimops.tenancy.links import links_at_hand, stray_links, tenant_links
from trimops.tenancy.querysets import TenantQuerySet
from trimops.tenancy.refuse_writing import require_own_links
from trimops.tenancy.unscoped import unscoped


class TenantModel(models.Model, metaclass=TenantModelBase):
    """A row that belongs to one business. Read through `objects.within(scope)`; every other way raises.

    Saving, re-reading, following a foreign key and deleting one row all stay within the row's own business.
    """

    business = models.ForeignKey(Business, on_delete=models.PROTECT, related_name="+")

    # How the model leads to a farm, as an ORM lookup of the farm's key; None hides it from farm clients.
    farm_path: ClassVar[str | None] = None

    # Read by the lock, which must not import this module.
    holds_rows_of_a_business: ClassVar[bool] = True

    objects = TenantQuerySet.as_manager()

    class Meta:
        abstract = True

    @property
    def scope(self) -> Scope:
        return Scope(business_id=self.business_id)

    def locked(self) -> Self:
        """This row read anew and locked until the transaction ends. Call inside `transaction.atomic`.

        Where somebody has taken it away meanwhile, a NotFound that is the model's DoesNotExist too.
        """
        manager: Any = type(self)._default_manager
        try:
            row: Self = manager.within(self.scope).locked().get(pk=self.pk)
        except ObjectDoesNotExist:
            raise _gone(type(self))("It is not there any more: somebody has taken it away.") from None
        return row

    def clean_fields(self, exclude: Any = None) -> None:
        """Refuse, on its field, a link to a row of another business as if that row did not exist."""
        business_id: int | None = self.business_id
        if business_id is None:
            # Without a business no parent can be right; the missing business itself is the fault to tell.
            super().clean_fields({*(exclude or ()), *(field.name for field in tenant_links(type(self)))})
            return
        # because: Django would ask the database once for each foreign key, though its row has just been read
        with parents_within(self.scope):
            super().clean_fields({*(exclude or ()), *links_at_hand(self)})

    def clean(self) -> None:
        """Refuse a linked row that is at hand and says another business (it need not be saved yet)."""
        super().clean()
        if strays := stray_links(self):
            raise ValidationError(dict.fromkeys(strays, "This belongs to another business."))

    def validate_unique(self, exclude: Any = None) -> None:
        with unscoped("a unique value is looked for among all rows, as the database does"):
            super().validate_unique(exclude)

    def validate_constraints(self, exclude: Any = None) -> None:
        with unscoped("a constraint is checked among all rows, as the database does"):
            super().validate_constraints(exclude)

    def delete(self, *args: Any, **kwargs: Any) -> tuple[int, dict[str, int]]:
        """Delete this row if it is there within its own business, with what Django finds hanging on it."""
        manager: Any = type(self)._default_manager
        if self.pk is not None and not manager.within(self.scope).filter(pk=self.pk).exists():
            return 0, {}
        with unscoped("the row was proven; what hangs on it goes or protects it"):
            return super().delete(*args, **kwargs)

    delete.alters_data = True  # type: ignore[attr-defined]

    def _do_update(self, base_qs: Any, *args: Any, **kwargs: Any) -> Any:
        # Django's save() updates by key alone; a row never changes its business, so add it to the condition.
        require_own_links(self)
        return super()._do_update(base_qs.within(self.scope), *args, **kwargs)


@cache
def _gone(model: type[TenantModel]) -> type[NotFound]:
    return type("RowIsGone", (NotFound, model.DoesNotExist), {})
