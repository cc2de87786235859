"""What the air does to the work: moisture, sun, stillness, wet leaves and bark, ground. Columns in, columns out."""
