# Builds the prover. Needs libsimavr-dev and libelf-dev.
BUILD ?= .
$(BUILD)/prover: prover.c
	$(CC) -std=c99 -O2 -Wall -Wextra -Wpedantic -Werror $< -o $@ -lsimavr -lelf
