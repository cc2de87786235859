"""The pages as a Django app."""

from django.apps import AppConfig


class WebConfig(AppConfig):
    """Templates and static files of the pages."""

    name = "stemward.web"
    label = "web"
