using System.Text;
using Training.Cli;

var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var input = new StreamReader(Console.OpenStandardInput(), utf8);
using var output = new StreamWriter(Console.OpenStandardOutput(), utf8, bufferSize: 65_536) { NewLine = "\n" };
using var errors = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n" };
return Cli.Run(args, input, output, errors);
