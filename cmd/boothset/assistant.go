package main

func runAssistant(std stdio, getenv func(string) string) int { return exitFailed }
