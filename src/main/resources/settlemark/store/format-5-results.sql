ALTER TABLE {t}channel_reading ADD COLUMN instrument TEXT;
