Console.WriteLine("usage: simulation seed FOLDER");
return 1;
