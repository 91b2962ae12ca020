-- CreateTable
CREATE TABLE "LevelBackground" (
    "levelId" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "page" INTEGER NOT NULL,
    "pages" INTEGER NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "dotsPerInch" REAL,
    "picture" BLOB NOT NULL,
    "paper" BLOB NOT NULL,
    "sha256" TEXT NOT NULL,
    "source" BLOB,
    "calibration" JSONB,
    "byUserId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "LevelBackground_levelId_fkey" FOREIGN KEY ("levelId") REFERENCES "Level" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
