"""How every Django form is drawn: label, help, what to mend, the field, and a summary on top."""

from django.forms.boundfield import BoundField
from django.forms.renderers import TemplatesSetting
from django.forms.widgets import Widget


class LabelledField(BoundField):
    """A field whose label stands above it: grey words inside the field vanish when they are needed, so none."""

    def build_widget_attrs(  # type: ignore[override]  # because: the stubs fix the attrs to str or bool
        self, attrs: dict[str, object], widget: Widget | None = None
    ) -> dict[str, object]:
        built: dict[str, object] = dict(super().build_widget_attrs(attrs, widget))  # type: ignore[arg-type]
        built["placeholder"] = False
        return built


class FormLook(TemplatesSetting):
    """Set as FORM_RENDERER; needs "django.forms" among the installed apps (its widgets' templates)."""

    form_template_name = "web/forms/form.html"
    field_template_name = "web/forms/field.html"
    bound_field_class = LabelledField
