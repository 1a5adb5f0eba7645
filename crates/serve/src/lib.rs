//! Pages over HTTP: routes, access, forms.
