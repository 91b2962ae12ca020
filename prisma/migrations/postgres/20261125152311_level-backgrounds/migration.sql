-- CreateTable
CREATE TABLE "LevelBackground" (
    "levelId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "page" INTEGER NOT NULL,
    "pages" INTEGER NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "dotsPerInch" DOUBLE PRECISION,
    "picture" BYTEA NOT NULL,
    "paper" BYTEA NOT NULL,
    "sha256" TEXT NOT NULL,
    "source" BYTEA,
    "calibration" JSONB,
    "byUserId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "LevelBackground_pkey" PRIMARY KEY ("levelId")
);

-- AddForeignKey
ALTER TABLE "LevelBackground" ADD CONSTRAINT "LevelBackground_levelId_fkey" FOREIGN KEY ("levelId") REFERENCES "Level"("id") ON DELETE CASCADE ON UPDATE CASCADE;
