using SurfaceUnroll.Cli;

return CommandLine.Run(args, Screen.OfConsole());
