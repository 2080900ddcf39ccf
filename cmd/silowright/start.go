package main

var startCommand = command{
	name:    "start",
	args:    "DIR",
	summary: "write a commented job file, a price list and a measuring sheet to DIR",
	example: "silowright start my-silos",
	run:     runStart,
}

func runStart(e *env, args []string) error {
	_, err := parseFlags(newFlags("start"), args, 1, 1)
	return err
}
