"""Weather in: forecasts and histories of hours, from files anyone may send and from one service, always with doubts."""

from stemward.gate.weather.read import NotWeather, read_weather

__all__ = ["NotWeather", "read_weather"]
