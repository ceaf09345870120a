"""How every Django form is drawn: label, help, what to mend, the field, and a summary on top."""

from django.forms.renderers import TemplatesSetting


class FormLook(TemplatesSetting):
    """Set as FORM_RENDERER; needs "django.forms" among the installed apps (its widgets' templates)."""

    form_template_name = "web/forms/form.html"
    field_template_name = "web/forms/field.html"
