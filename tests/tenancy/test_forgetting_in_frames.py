"""Ways to forget the scope through what stands on the ORM: shortcuts, forms, class views, DRF, dumps, hand-made SQL."""

import io
from contextlib import suppress

import pytest
from django import forms
from django.contrib.admin import AdminSite, ModelAdmin
from django.core.management import call_command
from django.forms import inlineformset_factory, modelform_factory, modelformset_factory
from django.shortcuts import get_list_or_404, get_object_or_404
from django.test import RequestFactory
from django.views.generic import DetailView, ListView
from rest_framework import generics, serializers
from rest_framework.validators import UniqueValidator

from farms.models import Contact, Farm
from trimops.tenancy.errors import ScopeRequired
from visits.models import Visit, VisitEvent

GET = RequestFactory().get("/")
EventForm = modelform_factory(VisitEvent, fields=["visit"])
EventFormSet = modelformset_factory(VisitEvent, fields=["note"])
ContactFormSet = inlineformset_factory(Farm, Contact, fields=["name"])


class EventSerializer(serializers.ModelSerializer):
    class Meta:
        model = VisitEvent
        fields = ["visit", "note"]


class FarmSerializer(serializers.ModelSerializer):
    class Meta:
        model = Farm
        fields = ["name", "visits"]


class EventsApi(generics.ListAPIView):
    queryset = VisitEvent.objects.all()
    serializer_class = EventSerializer
    permission_classes = []


class EventApi(generics.RetrieveUpdateDestroyAPIView):
    queryset = VisitEvent.objects.all()
    serializer_class = EventSerializer
    permission_classes = []


EventsApi.handle_exception = EventApi.handle_exception = lambda self, error: _again(error)


def _again(error):
    raise error


class Choice(forms.Form):
    one = forms.ModelChoiceField(Visit.objects.all(), required=False)
    many = forms.ModelMultipleChoiceField(Visit.objects.all(), required=False)


def dump(*flags):
    return call_command("dumpdata", "visits.Visit", *flags, traceback=True, stdout=io.StringIO())


def detail(pk):
    return DetailView.as_view(model=Visit, template_name="x")(GET, pk=pk)


WAYS = {
    "get_object_or_404 of a class": lambda w: get_object_or_404(Visit, pk=w.theirs.visit.pk),
    "get_object_or_404 of rows": lambda w: get_object_or_404(Visit.objects.all(), pk=w.theirs.visit.pk),
    "get_list_or_404": lambda w: get_list_or_404(Visit, state="wanted"),
    "ListView": lambda w: ListView.as_view(model=Visit, template_name="x")(GET).context_data["object_list"][
        0
    ],
    "DetailView": lambda w: detail(w.theirs.visit.pk),
    "form choices shown": lambda w: Choice().as_p(),
    "form choice taken": lambda w: Choice({"one": w.theirs.visit.pk}).is_valid(),
    "form choices taken": lambda w: Choice({"many": [w.theirs.visit.pk]}).is_valid(),
    "ModelForm shown": lambda w: EventForm().as_p(),
    "ModelForm taken": lambda w: EventForm({"visit": w.theirs.visit.pk}).is_valid(),
    "ModelFormSet": lambda w: EventFormSet().as_p(),
    "inline formset": lambda w: ContactFormSet(instance=w.theirs.farm).as_p(),
    "DRF list": lambda w: EventsApi.as_view()(GET),
    "DRF detail": lambda w: EventApi.as_view()(GET, pk=their_event(w).pk),
    "DRF delete": lambda w: EventApi.as_view()(RequestFactory().delete("/"), pk=their_event(w).pk),
    "DRF relation written": lambda w: EventSerializer(data={"visit": w.theirs.visit.pk}).is_valid(),
    "DRF relation choices": lambda w: EventSerializer().fields["visit"].choices,
    "DRF relation read": lambda w: FarmSerializer(w.theirs.farm).data,
    "DRF rows read": lambda w: EventSerializer(VisitEvent.objects.all(), many=True).data,
    "DRF unique": lambda w: UniqueValidator(Visit.objects.all())(w.mine.visit.uid, _field()),
    "dumpdata": lambda w: dump(),
    "dumpdata of the base": lambda w: dump("--all"),
    "admin": lambda w: list(ModelAdmin(Visit, AdminSite()).get_queryset(GET)),
    "next by date": lambda w: w.mine.visit.get_next_by_asked_at(),
}


def their_event(world):
    return VisitEvent.objects.within(world.theirs.scope)[0]


def _field():
    field = serializers.UUIDField()
    field.bind("uid", serializers.Serializer())
    return field


def test_forgetting_the_scope_raises(world, way):
    with pytest.raises(ScopeRequired):
        way(world)


def test_the_same_call_reaches_the_rows_when_the_lock_is_taken_out(world, way, no_lock):
    # These refusals say that rows were looked at.
    with suppress(serializers.ValidationError, Visit.DoesNotExist):
        way(world)
