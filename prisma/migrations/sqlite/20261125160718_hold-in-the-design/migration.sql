-- What the floor substituted stands in the job document; nothing was ever written here. By hand, since a table that is made anew would be dropped with its rows' children.
ALTER TABLE "Run" DROP COLUMN "held";
