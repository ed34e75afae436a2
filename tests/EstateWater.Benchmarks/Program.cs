Console.WriteLine("no benchmark named");
return 1;
