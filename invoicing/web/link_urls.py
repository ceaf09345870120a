"""What a link in a mail opens, without signing in."""

from django.urls import path

from invoicing.web.link_pages import InvoiceByLinkPage, InvoiceByLinkPdf, InvoiceByLinkXml

urlpatterns = [
    path("<str:secret>/", InvoiceByLinkPage.as_view(), name="invoice_by_link"),
    path("<str:secret>/invoice.pdf", InvoiceByLinkPdf.as_view(), name="invoice_by_link_pdf"),
    path("<str:secret>/<str:form>.xml", InvoiceByLinkXml.as_view(), name="invoice_by_link_xml"),
]
