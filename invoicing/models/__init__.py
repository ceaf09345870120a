from invoicing.models.invoice import Invoice, InvoiceLine, InvoiceState, NumberSeries
from invoicing.models.prices import Price, PriceList, TaxRate

__all__ = ["Invoice", "InvoiceLine", "InvoiceState", "NumberSeries", "Price", "PriceList", "TaxRate"]
