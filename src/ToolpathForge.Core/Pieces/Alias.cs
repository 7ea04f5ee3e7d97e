global using Piece = ToolpathForge.Pieces.Piece;
