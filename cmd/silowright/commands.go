package main

// commands lists every command in the order the help shows them. A command
// lives in a file of its name and is added here.
func commands() []command {
	return []command{
		startCommand,
		checkCommand,
		packCommand,
		costCommand,
		compareCommand,
		waterCommand,
		seedCommand,
		countCommand,
		holeCommand,
		tablesCommand,
		serveCommand,
		manualCommand(),
		completionCommand(),
		licencesCommand,
	}
}
